import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { SaxesParser } from "saxes";
import { afterAll, describe, expect, test } from "vitest";
import { USUAL } from "#server/config/configSchema";
import { askedBesides } from "#server/config/readConfig";
import { serviceArguments } from "#server/service/asService";
import { installService, uninstallService } from "#server/service/installService";
import { type Service, type ServiceAsked, serviceOf } from "#server/service/service";

const folder = mkdtempSync(join(tmpdir(), "gritwright-service-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Everything that a format might take for its own. */
const AWKWARD = `/srv/Kit's "lanes" & <balls>/50% off/$HOME/back\\slash`;

function asked(change: Partial<ServiceAsked>): Service {
  const usual = { platform: "linux", home: "/home/kit", configHome: null, userId: 1000, userName: "SHOP\\kit", logFile: "/home/kit/log" };
  const service = serviceOf({ ...usual, command: [process.execPath, "/opt/gritwright/main.js", "serve", "--data", AWKWARD], ...change });
  if (service === null) throw new Error("no service");
  return service;
}

interface Element {
  readonly name: string;
  readonly children: Element[];
  text: string;
}

/** An XML document, well-formed or refused. */
function read(text: string): Element {
  const top: Element = { name: "", children: [], text: "" };
  const open = [top];
  const parser = new SaxesParser();
  parser.on("opentag", ({ name }) => {
    const element: Element = { name, children: [], text: "" };
    open.at(-1)?.children.push(element);
    open.push(element);
  });
  parser.on("text", (words) => {
    const last = open.at(-1);
    if (last !== undefined) last.text += words;
  });
  parser.on("closetag", () => void open.pop());
  parser.write(text).close();
  return top.children[0];
}

const at = (element: Element, ...names: string[]): Element =>
  names.reduce((within, name) => {
    const found = within.children.find((child) => child.name === name);
    if (found === undefined) throw new Error(`${name} is not in ${within.name}`);
    return found;
  }, element);

describe("a systemd unit", () => {
  test("of a user lies with the user's, of root with the system's (systemd.unit(5), Unit File Load Path)", () => {
    expect(asked({}).path).toBe("/home/kit/.config/systemd/user/gritwright.service");
    expect(asked({ configHome: "/cfg" }).path).toBe("/cfg/systemd/user/gritwright.service");
    expect(asked({ userId: 0 }).path).toBe("/etc/systemd/system/gritwright.service");
    expect(asked({}).text).toContain("WantedBy=default.target");
    expect(asked({ userId: 0 }).text).toContain("WantedBy=multi-user.target");
    expect(asked({}).install.map(({ command }) => command.slice(0, 2).join(" "))).toContain("systemctl --user");
  });

  test("writes what systemd would replace so that it stays (systemd.service(5), Command Lines; systemd.syntax(7), Quoting)", () => {
    const line = /^ExecStart=(.*)$/m.exec(asked({}).text)?.[1] ?? "";
    expect(line).toContain(String.raw`"/srv/Kit's \"lanes\" & <balls>/50%% off/$$HOME/back\\slash"`);
    expect(line.match(/(?<!\\)"/g)).toHaveLength(10);
  });

  test.runIf(existsSync("/usr/bin/systemd-analyze"))("is found in order by systemd-analyze verify", () => {
    const program = join(folder, "main.js");
    writeFileSync(program, "");
    for (const [kind, userId] of [
      ["--system", 0],
      ["--user", 1000],
    ] as const) {
      const env = { ...process.env, XDG_RUNTIME_DIR: folder };
      const path = join(folder, "gritwright.service");
      writeFileSync(path, asked({ userId }).text);
      const verify = () => spawnSync("systemd-analyze", ["verify", kind, path], { encoding: "utf8", env });
      expect(ownLines(verify().stderr)).toEqual([]);
      writeFileSync(path, asked({ userId }).text.replace("Restart=on-failure", "Restart=sometimes"));
      expect(ownLines(verify().stderr).join()).toContain("sometimes");
    }
  });
});

/** What is said of our unit, and not of those that the machine has. */
function ownLines(said: string): string[] {
  return said.split("\n").filter((line) => line.includes("gritwright"));
}

describe("a property list for launchd", () => {
  /** Keys and their types, launchd.plist(5). */
  const KEYS: Readonly<Record<string, RegExp>> = {
    Label: /^string$/,
    ProgramArguments: /^array$/,
    RunAtLoad: /^(true|false)$/,
    KeepAlive: /^(true|false|dict)$/,
    ThrottleInterval: /^integer$/,
    ExitTimeOut: /^integer$/,
    Umask: /^(integer|string)$/,
    StandardOutPath: /^string$/,
    StandardErrorPath: /^string$/,
  };

  test("has keys that there are, each of its type, and the words as they are", () => {
    const pairs = at(read(asked({ platform: "darwin" }).text), "dict").children;
    for (let i = 0; i < pairs.length; i += 2) {
      expect(pairs[i].name).toBe("key");
      expect(pairs[i + 1].name, pairs[i].text).toMatch(KEYS[pairs[i].text]);
    }
    const value = (key: string) => pairs[pairs.findIndex(({ text }) => text === key) + 1];
    expect(value("ProgramArguments").children.map(({ text }) => text)).toEqual([
      process.execPath,
      "/opt/gritwright/main.js",
      "serve",
      "--data",
      AWKWARD,
    ]);
    // "Property lists don't support octal": 0077.
    expect(Number(value("Umask").text)).toBe(0o077);
    expect(asked({ platform: "darwin" }).path).toBe("/home/kit/Library/LaunchAgents/gritwright.plist");
    expect(asked({ platform: "darwin", userId: 0 }).path).toBe("/Library/LaunchDaemons/gritwright.plist");
  });
});

describe("a task for Windows' scheduler", () => {
  const command = ["C:\\Program Files\\nodejs\\node.exe", "C:\\npm\\main.js", "serve", "--own", "--data", "C:\\Kit & Co"];
  const task = asked({ platform: "win32", command, logFile: "C:\\Users\\kit\\AppData\\Local\\Gritwright\\service.log" });

  test("keeps to the Task Scheduler Schema", () => {
    const root = read(task.text);
    expect(task.text).toContain('<Task version="1.2" xmlns="http://schemas.microsoft.com/windows/2004/02/mit/task">');
    expect(root.children.map(({ name }) => name)).toEqual(["RegistrationInfo", "Triggers", "Principals", "Settings", "Actions"]);
    expect(at(root, "Principals", "Principal", "LogonType").text).toMatch(/^(S4U|Password|InteractiveToken|InteractiveTokenOrPassword)$/);
    expect(at(root, "Principals", "Principal", "UserId").text).toBe("SHOP\\kit");
    const again = at(root, "Settings", "RestartOnFailure");
    // restartType: Interval from PT1M to P31D, Count an unsignedByte from 1.
    expect(at(again, "Interval").text).toMatch(/^PT[1-9]\d?M$/);
    expect(Number(at(again, "Count").text)).toBeLessThanOrEqual(255);
    // triggerBaseType is a sequence: Repetition comes before Enabled.
    expect(at(root, "Triggers", "BootTrigger").children.map(({ name }) => name)).toEqual(["Repetition", "Enabled"]);
    expect(at(root, "Settings", "MultipleInstancesPolicy").text).toBe("IgnoreNew");
    expect(at(root, "Settings", "ExecutionTimeLimit").text).toBe("PT0S");
  });

  test("starts the program through a shell that writes down what it says", () => {
    expect(at(read(task.text), "Actions", "Exec", "Arguments").text).toBe(
      `/d /s /c "${command.map((word) => `"${word}"`).join(" ")} >> "C:\\Users\\kit\\AppData\\Local\\Gritwright\\service.log" 2>&1"`,
    );
  });
});

describe("installing", () => {
  const service = (path: string): Service => ({ ...asked({}), path });

  test("writes the file, then tells the system; taking it out leaves none", async () => {
    const ran: string[] = [];
    const run = async (command: readonly string[]) => {
      ran.push(command.join(" "));
      return null;
    };
    const one = service(join(folder, "units", "gritwright.service"));
    await installService(one, run);
    expect(readFileSync(one.path, "utf8")).toBe(one.text);
    expect(ran.slice(0, 3)).toEqual([
      "systemctl --user daemon-reload",
      "systemctl --user enable gritwright.service",
      "systemctl --user restart gritwright.service",
    ]);
    expect(await uninstallService(one, run)).toBe(true);
    expect(existsSync(one.path)).toBe(false);
    expect(await uninstallService(one, run)).toBe(false);
  });

  test("Windows' file has the mark of UTF-16", async () => {
    const one = { ...asked({ platform: "win32" }), path: join(folder, "task.xml") };
    await installService(one, async () => null);
    expect([...readFileSync(one.path).subarray(0, 2)]).toEqual([0xff, 0xfe]);
  });

  test.each([
    ["Failed to connect to bus: No medium found", /systemd is not running for this user/],
    ["ERROR: Access is denied.", /as administrator/],
    ["spawn systemctl ENOENT", /no such command/],
  ])("says what to do where the system refuses: %s", async (said, advice) => {
    await expect(installService(service(join(folder, "refused.service")), async () => said)).rejects.toThrow(advice);
  });

  test("says so where the file cannot be written", async () => {
    writeFileSync(join(folder, "file"), "");
    await expect(installService(service(join(folder, "file", "x.service")), async () => null)).rejects.toThrow(/Nothing was installed/);
  });

  test("a service is started from elsewhere, always with the same shop, folder and port, and opens no browser", () => {
    const args = ["--own", "--install-service", "--cert=c.pem", "--key", "k.pem", "--name", "shop.home.arpa", "--move-records"];
    const config = { ...USUAL, data: "data" };
    const cwd = process.cwd();
    expect(serviceArguments(args, config)).toEqual([
      ...["--own", `--cert=${join(cwd, "c.pem")}`, "--key", join(cwd, "k.pem"), "--name", "shop.home.arpa"],
      ...["--data", join(cwd, "data"), "--port", "4780", "--no-open"],
    ]);
    expect(serviceArguments(["--own", "--data", "/d", "--port", "9"], { ...config, port: 9 })).toEqual([
      "--own",
      "--data",
      "/d",
      "--port",
      "9",
      "--no-open",
    ]);
    expect(askedBesides(["--own", "--install-service"])).toMatchObject({ service: "install", namesShop: true });
    expect(() => askedBesides(["--install-service", "--uninstall-service"])).toThrow(/usage/);
  });
});
