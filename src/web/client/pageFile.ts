/**
 * Loads a file of the page when it is needed. A browser remembers a module that did not come as missing for as long as the page is open, so where the
 * network broke off in the middle the page is loaded again: once by itself, afterwards by whoever wants it.
 *
 * @throws what the browser says, where the page was loaded again already, or nobody is there to load it from
 */
export async function pageFile<Module>(load: () => Promise<Module>): Promise<Module> {
  try {
    return await load();
  } catch (error) {
    if (wasLoadedAgain() || !(await isServerThere())) throw error;
    location.reload();
    return new Promise<never>(() => {});
  }
}

function wasLoadedAgain(): boolean {
  const [how] = performance.getEntriesByType("navigation");
  return how instanceof PerformanceNavigationTiming && how.type === "reload";
}

async function isServerThere(): Promise<boolean> {
  const response = await fetch("/api/health").catch(() => null);
  return response?.ok === true;
}
