import type { laneRoutes } from "#contract/routes/lanes";
import type { Records } from "#records/records";
import type { Handlers } from "../http/mount.ts";
import { changed, created, got, listed, removed } from "./keptHandlers.ts";

export function laneHandlers({ houses, lanes, patterns, shotNotes }: Records): Handlers<typeof laneRoutes> {
  return {
    listHouses: listed(houses),
    getHouse: got(houses),
    createHouse: created(houses),
    changeHouse: changed(houses),
    removeHouse: removed(houses),

    listLanes: listed(lanes),
    getLane: got(lanes),
    createLane: created(lanes),
    changeLane: changed(lanes),
    removeLane: removed(lanes),

    listPatterns: listed(patterns),
    getPattern: got(patterns),
    createPattern: created(patterns),
    changePattern: changed(patterns),
    removePattern: removed(patterns),

    listShotNotes: listed(shotNotes),
    getShotNote: got(shotNotes),
    createShotNote: created(shotNotes),
    changeShotNote: changed(shotNotes),
    removeShotNote: removed(shotNotes),
  };
}
