/** Processor seconds of all threads of this program while something is worked out: what else the machine does hardly moves them. */
export function processorSecondsOf(work: () => unknown): number {
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

/** The same for what takes a while. */
export async function processorSecondsOfLong(work: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}
