import type { shop } from "../../shop/shopClient.ts";

/** What may be changed of a ball. */
export type BallChange = Parameters<(typeof shop.balls)[":id"]["$patch"]>[0]["json"];
