import { takeRest } from "virtual:catalogue";
import { lazy } from "react";
import { pageFile } from "./pageFile.ts";

/** A room whose file is loaded when somebody goes there. Nothing has been typed in it yet that loading the page again could lose. */
export const lazyRoom: typeof lazy = (load) =>
  lazy(() =>
    pageFile(async () => {
      await takeRest();
      return load();
    }),
  );

/** The room that the page opens with: its words come with it. */
export const openingRoom: typeof lazy = (load) => lazy(() => pageFile(load));
