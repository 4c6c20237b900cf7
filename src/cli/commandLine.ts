import { nearestWord } from "#contract/nearest";
import { COMMANDS, type CommandName, type CommandSaid, OTHERS } from "./commandTable.ts";
import type { Options } from "./options.ts";
import { usageFault } from "./usageFault.ts";
import type { ExitCode, World } from "./world.ts";

type Command = (files: readonly string[], options: Options, world: World) => Promise<ExitCode>;
type Other = (args: readonly string[], world: World) => Promise<ExitCode>;

/** A command is its own file, one line here, and one in commandTable.ts. Its file is read when it is asked for, and no other's. */
const LOADED: Readonly<Record<CommandName, () => Promise<Command>>> = {
  plan: async () => oneFile("plan", (await import("./plan.ts")).plan),
  shot: async () => oneFile("shot", (await import("./shot.ts")).shot),
  carry: async () => oneFile("carry", (await import("./carry.ts")).carry),
  bag: async () => oneFile("bag", (await import("./bag.ts")).bag),
  transition: async () => oneFile("transition", (await import("./transition.ts")).transition),
  trial: async () => (await import("./trial.ts")).trial,
  delivery: async () => oneFile("delivery", (await import("./delivery.ts")).delivery),
  video: async () => oneFile("video", (await import("./video.ts")).video),
  correct: async () => oneFile("correct", (await import("./correct.ts")).correct),
  diagnose: async () => oneFile("diagnose", (await import("./diagnose.ts")).diagnose),
  stages: async () => oneFile("stages", (await import("./stages.ts")).stages),
  fade: async () => oneFile("fade", (await import("./fade.ts")).fade),
  readings: async () => oneFile("readings", (await import("./readings.ts")).readings),
  profile: async () => (await import("./profile.ts")).profile,
  gauge: async () => oneFile("gauge", (await import("./gauge.ts")).gauge),
  padwork: async () => oneFile("padwork", (await import("./padwork.ts")).padwork),
  limits: async () => oneFile("limits", (await import("./limits.ts")).limits),
  backup: async () => (await import("./backup.ts")).backup,
  verify: async () => (await import("./verify.ts")).verify,
  restore: async () => (await import("./restore.ts")).restore,
  export: async () => (await import("./export.ts")).exportAll,
  import: async () => (await import("./import.ts")).importTable,
  undo: async () => (await import("./import.ts")).undo,
  shops: async () => (await import("./shops.ts")).shops,
  move: async () => (await import("./move.ts")).move,
};

const OTHER: Readonly<Record<keyof typeof OTHERS, Other>> = {
  serve: async (args) => (await import("#server/serve")).serve(args),
  update: async (args) => (await import("#server/program/updateHere")).updateHere(args),
  certificate: async (args, world) => (await import("#server/certificate/certificateHere")).certificateHere(args, world.now()),
  completion: async (args, world) => (await import("./completion.ts")).completion(args, world),
};

const NAMES = [...Object.keys(COMMANDS), ...Object.keys(OTHERS)];

/** Runs one command line to its end. Every fault is reported, none is thrown. */
export async function runCommandLine(args: readonly string[], world: World): Promise<ExitCode> {
  try {
    return await dispatch(args, world);
  } catch (fault) {
    return (await import("./faultReport.ts")).reportFault(fault, args.includes("--json"), world);
  }
}

/** The command is the first word, or where options come before it the first that is one. */
async function dispatch(args: readonly string[], world: World): Promise<ExitCode> {
  const at = args[0]?.startsWith("-") ? args.findIndex((arg) => NAMES.includes(arg)) : NAMES.includes(args[0]) ? 0 : -1;
  const rest = args.filter((_, index) => index !== at);
  if (at === -1) return withoutCommand(args, world);
  const name = args[at];
  if (isOther(name)) return rest.includes("--help") || rest.includes("-h") ? answer(otherHelp(name), world) : OTHER[name](rest, world);
  return run(name as CommandName, rest, world);
}

async function withoutCommand(args: readonly string[], world: World): Promise<ExitCode> {
  const [word] = args.filter((arg) => !arg.startsWith("-"));
  const names = NAMES.join(", ");
  if (word !== undefined) {
    const meant = nearestWord(word, NAMES);
    const hint = meant === null ? "" : ` Did you mean ${meant}?`;
    throw usageFault(`"${word}" is not a command.${hint} Commands: ${names}.`, names, word);
  }
  if (args.some((arg) => arg === "--help" || arg === "-h")) return answer((await import("./help.ts")).HELP, world);
  if (args.some((arg) => arg === "--version" || arg === "-v"))
    return answer(`${(await import("#server/version")).programVersion()}\n`, world);
  throw usageFault(`Which command? One of ${names}; gritwright --help tells more.`, names);
}

async function run(name: CommandName, args: readonly string[], world: World): Promise<ExitCode> {
  const said: CommandSaid = COMMANDS[name];
  const line = (await import("./parseLine.ts")).parseLine(name, args, world.print);
  if (line === null) return 0;
  const options = (await import("./options.ts")).readOptions(line);
  if (options.words.length === 0 && said.isWordless === undefined)
    throw usageFault(`gritwright ${name} wants a file: gritwright ${name} FILE.`, "a file");
  if (options.words.filter((word) => word === "-").length > 1)
    throw usageFault("Standard input can be read once: - stands twice.", "one -", "-");
  if (options.svg === "-" && options.json) throw usageFault("--json and --svg - both want standard output.", "--svg FILE, or no --json");
  (await import("#tasks/kernel/vectorKernel")).bringVectorKernel();
  return (await LOADED[name]())(options.words, options, options.svg === "-" ? textBeside(world) : world);
}

/** Standard output is the picture's. */
function textBeside(world: World): World {
  return { ...world, print: world.tell };
}

/** A command that takes one file and no more. */
function oneFile(name: string, command: (file: string, options: Options, world: World) => Promise<ExitCode>): Command {
  return ([file, ...rest], options, world) => {
    if (rest.length > 0) throw usageFault(`${name} takes one file; "${rest[0]}" is one too many.`, "one file", rest[0]);
    return command(file, options, world);
  };
}

function isOther(name: string): name is keyof typeof OTHERS {
  return name in OTHERS;
}

function otherHelp(name: keyof typeof OTHERS): string {
  const { usage, says, help, examples } = OTHERS[name];
  const lines = examples.map((example) => `  gritwright ${name} ${example}`.trimEnd());
  return `Usage: gritwright ${name} ${usage}\n\n${says[0].toUpperCase()}${says.slice(1)}.\n\n${help}\n\nExamples:\n${lines.join("\n")}\n`;
}

function answer(text: string, world: World): ExitCode {
  world.print(text);
  return 0;
}
