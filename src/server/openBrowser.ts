import { spawn } from "node:child_process";

/** The command that shows an address to the person in front of this machine, or null where there is no such person. */
export function browserCommand(platform: string, environment: Readonly<Record<string, string | undefined>>): readonly string[] | null {
  if (environment.CI !== undefined && environment.CI !== "" && environment.CI !== "false") return null;
  if (platform === "darwin") return ["open"];
  if (platform === "win32") return ["cmd", "/c", "start", ""];
  const hasScreen = (environment.DISPLAY ?? environment.WAYLAND_DISPLAY ?? "") !== "";
  return hasScreen ? ["xdg-open"] : null;
}

/** Opens the address in the browser; a machine without one is left alone. */
export function openBrowser(address: string): void {
  const [command, ...before] = browserCommand(process.platform, process.env) ?? [];
  if (command === undefined) return;
  const child = spawn(command, [...before, address], { stdio: "ignore", detached: true });
  child.on("error", () => undefined);
  child.unref();
}
