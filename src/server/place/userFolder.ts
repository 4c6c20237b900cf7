import { isAbsolute, posix, win32 } from "node:path";

/** What the folder hangs on: the platform, its variables, the user's home. */
export interface Host {
  readonly platform: string;
  readonly environment: Readonly<Record<string, string | undefined>>;
  readonly home: string;
}

/**
 * Where this user's programs keep their data by the platform's convention, and in it our own folder: the same from wherever the program is started.
 *
 * Linux: XDG Base Directory Specification, `$XDG_DATA_HOME`, else `~/.local/share`; a relative path there "must be considered invalid". macOS: Apple's File
 * System Programming Guide, `~/Library/Application Support`. Windows: `%LOCALAPPDATA%` (FOLDERID_LocalAppData), for `%APPDATA%` is carried from machine to
 * machine with the user's profile, and a database that is open must not be.
 */
export function userFolder({ platform, environment, home }: Host): string {
  if (platform === "darwin") return posix.join(home, "Library", "Application Support", "Gritwright");
  if (platform === "win32") return win32.join(environment.LOCALAPPDATA || win32.join(home, "AppData", "Local"), "Gritwright");
  const stated = environment.XDG_DATA_HOME ?? "";
  return posix.join(isAbsolute(stated) ? stated : posix.join(home, ".local", "share"), "gritwright");
}
