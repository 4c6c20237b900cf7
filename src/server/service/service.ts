import { posix, win32 } from "node:path";
import { launchdPlist } from "./launchd.ts";
import { systemdUnit } from "./systemd.ts";
import { windowsTask } from "./windowsTask.ts";

/** What is to be started, and by whom. */
export interface ServiceAsked {
  readonly platform: string;
  readonly home: string;
  /** `$XDG_CONFIG_HOME`, where it is set. */
  readonly configHome: string | null;
  /** Number of the user; 0 is root, and null where there are none. */
  readonly userId: number | null;
  /** `MACHINE\name` on Windows. */
  readonly userName: string;
  /** Node and the program, then what it is told. */
  readonly command: readonly string[];
  /** Where the service writes what it says, where the system does not keep that itself. */
  readonly logFile: string;
}

/** One step of installing or taking out; what may fail without harm is tried. */
export interface Step {
  readonly command: readonly string[];
  readonly mayFail: boolean;
}

/** What starts the server with the machine, and again when it broke: a file in the system's own format, and the commands that make it known. */
export interface Service {
  readonly path: string;
  /** How the file is written: Windows' scheduler takes UTF-16 with a mark. */
  readonly encoding: "utf8" | "utf16le";
  readonly text: string;
  readonly install: readonly Step[];
  readonly uninstall: readonly Step[];
  readonly restart: readonly Step[];
  /** From when on it runs, in words. */
  readonly when: string;
}

/** Name of the service with each system. */
export const SERVICE_NAME = "gritwright";

const must = (...command: string[]): Step => ({ command, mayFail: false });
const may = (...command: string[]): Step => ({ command, mayFail: true });

/** The service of this machine; null for a system of which none is known. */
export function serviceOf(asked: ServiceAsked): Service | null {
  if (asked.platform === "linux") return onLinux(asked);
  if (asked.platform === "darwin") return onMac(asked);
  return asked.platform === "win32" ? onWindows(asked) : null;
}

/** Root's unit is the system's. A user's own is also started without anybody signing in, once lingering is on. */
function onLinux({ home, configHome, userId, command }: ServiceAsked): Service {
  const isSystems = userId === 0;
  const unit = `${SERVICE_NAME}.service`;
  const control = ["systemctl", ...(isSystems ? [] : ["--user"])];
  const folder = isSystems ? "/etc/systemd/system" : posix.join(configHome ?? posix.join(home, ".config"), "systemd", "user");
  return {
    path: posix.join(folder, unit),
    encoding: "utf8",
    text: systemdUnit(command, isSystems ? "system" : "user"),
    install: [
      must(...control, "daemon-reload"),
      must(...control, "enable", unit),
      must(...control, "restart", unit),
      ...(isSystems ? [] : [may("loginctl", "enable-linger")]),
    ],
    uninstall: [may(...control, "disable", "--now", unit)],
    restart: [must(...control, "restart", unit)],
    when: isSystems ? "when the machine starts" : "when the machine starts (where lingering is off: when you sign in)",
  };
}

function onMac({ home, userId, command, logFile }: ServiceAsked): Service {
  const isSystems = userId === 0;
  const domain = isSystems ? "system" : `gui/${userId}`;
  const path = posix.join(isSystems ? "/Library/LaunchDaemons" : posix.join(home, "Library", "LaunchAgents"), `${SERVICE_NAME}.plist`);
  return {
    path,
    encoding: "utf8",
    text: launchdPlist(SERVICE_NAME, command, logFile),
    install: [may("launchctl", "bootout", `${domain}/${SERVICE_NAME}`), must("launchctl", "bootstrap", domain, path)],
    uninstall: [may("launchctl", "bootout", `${domain}/${SERVICE_NAME}`)],
    restart: [must("launchctl", "kickstart", "-k", `${domain}/${SERVICE_NAME}`)],
    when: isSystems ? "when the machine starts" : "when you sign in (installed with sudo: when the machine starts)",
  };
}

function onWindows({ userName, command, logFile }: ServiceAsked): Service {
  const path = win32.join(win32.dirname(logFile), `${SERVICE_NAME}-task.xml`);
  const name = ["/TN", SERVICE_NAME];
  return {
    path,
    encoding: "utf16le",
    text: windowsTask(userName, command, logFile),
    install: [must("schtasks", "/Create", ...name, "/XML", path, "/F"), must("schtasks", "/Run", ...name)],
    uninstall: [may("schtasks", "/End", ...name), may("schtasks", "/Delete", ...name, "/F")],
    restart: [may("schtasks", "/End", ...name), must("schtasks", "/Run", ...name)],
    when: "when the machine starts",
  };
}
