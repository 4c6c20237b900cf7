import { type UseQueryResult, useQuery } from "@tanstack/react-query";
import { createContext, useContext } from "react";
import type { Call, ReplyTo } from "./protocol.ts";
import type { WorkerPool } from "./workerPool.ts";

/** The page's workers, for rooms that compute or draw something. */
export const PoolHere = createContext<WorkerPool | null>(null);

/** @throws outside of the page's frame, which is a fault of ours */
export function usePool(): WorkerPool {
  const pool = useContext(PoolHere);
  if (pool === null) throw new Error("There are no workers around this part of the page.");
  return pool;
}

/**
 * What a worker makes of a call; stopped when the call is no longer wanted. The last answer stays in view while the next one is worked out.
 * @param name what tells this call from others, where the call itself is too large to be compared
 */
export function useComputed<C extends Call>(call: C | null, name: readonly unknown[] = [call]): UseQueryResult<ReplyTo<C>> {
  const pool = usePool();
  return useQuery<ReplyTo<C>>({
    queryKey: ["computed", ...name],
    queryFn: ({ signal }) => pool.call(call as C, signal),
    enabled: call !== null,
    staleTime: Number.POSITIVE_INFINITY,
    retry: false,
    networkMode: "always",
    placeholderData: (before) => before,
  });
}
