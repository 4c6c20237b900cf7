import { houseKept, houseWritten, laneKept, laneWritten, patternKept, patternWritten } from "../records/place.ts";
import { shotNoteKept, shotNoteWritten } from "../records/shotNote.ts";
import { changeRoute, createRoute, getRoute, listRoute, removeRoute } from "./kept.ts";

const NOTE_FILTER = ["bowlerId", "ballId", "houseId", "laneId", "patternId", "ticketId"] as const;

/** Houses, their lanes and patterns, and the shots that were seen on them. */
export const laneRoutes = {
  listHouses: listRoute("reader", "/api/houses", "houses", houseKept, []),
  getHouse: getRoute("reader", "/api/houses/:id", "a house", houseKept),
  createHouse: createRoute("technician", "/api/houses", "a house", houseWritten, houseKept),
  changeHouse: changeRoute("technician", "/api/houses/:id", "a house", houseWritten, houseKept),
  removeHouse: removeRoute("technician", "/api/houses/:id", "a house"),

  listLanes: listRoute("reader", "/api/lanes", "lanes", laneKept, ["houseId"]),
  getLane: getRoute("reader", "/api/lanes/:id", "a lane", laneKept),
  createLane: createRoute("technician", "/api/lanes", "a lane", laneWritten, laneKept),
  changeLane: changeRoute("technician", "/api/lanes/:id", "a lane", laneWritten, laneKept),
  removeLane: removeRoute("technician", "/api/lanes/:id", "a lane"),

  listPatterns: listRoute("reader", "/api/patterns", "patterns", patternKept, ["houseId"]),
  getPattern: getRoute("reader", "/api/patterns/:id", "a pattern", patternKept),
  createPattern: createRoute("technician", "/api/patterns", "a pattern", patternWritten, patternKept),
  changePattern: changeRoute("technician", "/api/patterns/:id", "a pattern", patternWritten, patternKept),
  removePattern: removeRoute("technician", "/api/patterns/:id", "a pattern"),

  listShotNotes: listRoute("reader", "/api/shot-notes", "shot notes", shotNoteKept, NOTE_FILTER),
  getShotNote: getRoute("reader", "/api/shot-notes/:id", "a shot note", shotNoteKept),
  createShotNote: createRoute("technician", "/api/shot-notes", "a shot note", shotNoteWritten, shotNoteKept),
  changeShotNote: changeRoute("technician", "/api/shot-notes/:id", "a shot note", shotNoteWritten, shotNoteKept),
  removeShotNote: removeRoute("technician", "/api/shot-notes/:id", "a shot note"),
};
