import { computePool } from "#server/computePool";
import type { Executor } from "#tasks/executor";
import { inlineExecutor } from "#tasks/inlineExecutor";

/** Runs a long computation in so many threads, which end with it; 1 computes in the caller's own thread. */
export async function withExecutor<T>(workers: number, compute: (executor: Executor) => Promise<T>): Promise<T> {
  if (workers === 1) return compute(inlineExecutor);
  const pool = computePool(workers);
  try {
    return await compute(pool);
  } finally {
    await pool.close();
  }
}
