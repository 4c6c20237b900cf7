import { houseKept, houseWritten, laneKept, laneWritten, patternKept, patternWritten } from "../records/place.ts";
import { shotNoteKept, shotNoteWritten } from "../records/shotNote.ts";
import { changeRoute, createRoute, getRoute, listRoute, removeRoute } from "./kept.ts";

const NOTE_FILTER = ["bowlerId", "ballId", "houseId", "laneId", "patternId", "ticketId"] as const;

/** Houses, their lanes and patterns, and the shots that were seen on them. */
export const laneRoutes = {
  listHouses: listRoute("/api/houses", "houses", houseKept, []),
  getHouse: getRoute("/api/houses/:id", "a house", houseKept),
  createHouse: createRoute("/api/houses", "a house", houseWritten, houseKept),
  changeHouse: changeRoute("/api/houses/:id", "a house", houseWritten, houseKept),
  removeHouse: removeRoute("/api/houses/:id", "a house"),

  listLanes: listRoute("/api/lanes", "lanes", laneKept, ["houseId"]),
  getLane: getRoute("/api/lanes/:id", "a lane", laneKept),
  createLane: createRoute("/api/lanes", "a lane", laneWritten, laneKept),
  changeLane: changeRoute("/api/lanes/:id", "a lane", laneWritten, laneKept),
  removeLane: removeRoute("/api/lanes/:id", "a lane"),

  listPatterns: listRoute("/api/patterns", "patterns", patternKept, ["houseId"]),
  getPattern: getRoute("/api/patterns/:id", "a pattern", patternKept),
  createPattern: createRoute("/api/patterns", "a pattern", patternWritten, patternKept),
  changePattern: changeRoute("/api/patterns/:id", "a pattern", patternWritten, patternKept),
  removePattern: removeRoute("/api/patterns/:id", "a pattern"),

  listShotNotes: listRoute("/api/shot-notes", "shot notes", shotNoteKept, NOTE_FILTER),
  getShotNote: getRoute("/api/shot-notes/:id", "a shot note", shotNoteKept),
  createShotNote: createRoute("/api/shot-notes", "a shot note", shotNoteWritten, shotNoteKept),
  changeShotNote: changeRoute("/api/shot-notes/:id", "a shot note", shotNoteWritten, shotNoteKept),
  removeShotNote: removeRoute("/api/shot-notes/:id", "a shot note"),
};
