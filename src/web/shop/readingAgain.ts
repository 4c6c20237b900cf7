import { QueryClient } from "@tanstack/react-query";
import { ShopFault } from "./shopClient.ts";

const FRESH_MS = 10_000;
const TRIES = 3;

/** How the page keeps what it has read. A refusal is not tried again; a server that is not there is. */
export function shopMemory(): QueryClient {
  return new QueryClient({
    defaultOptions: {
      queries: {
        staleTime: FRESH_MS,
        retry: (failures, error) => failures < TRIES && error instanceof ShopFault && error.problem === null,
        // What was read stays in view while the server is away.
        networkMode: "always",
      },
      mutations: { networkMode: "always", retry: false },
    },
  });
}
