import { HELP } from "./help.ts";
import { type OptionName, type Options, readOptions, usageFault, wantsJson } from "./options.ts";
import type { ExitCode, World } from "./world.ts";

type Command = (files: readonly string[], options: Options, world: World) => Promise<ExitCode>;

interface Entry {
  /** Its file is read when it is asked for, and no other's. */
  readonly load: () => Promise<Command>;
  /** Options that it takes besides `--json`. */
  readonly takes: readonly OptionName[];
  /** It is told everything by its options. */
  readonly isWordless?: true;
}

/** A command is its own file and one line here. */
const COMMANDS = new Map<string, Entry>([
  ["plan", { load: async () => oneFile((await import("./plan.ts")).plan), takes: ["svg", "seed", "workers", "worlds"] }],
  ["shot", { load: async () => oneFile((await import("./shot.ts")).shot), takes: ["svg", "seed", "at"] }],
  ["carry", { load: async () => oneFile((await import("./carry.ts")).carry), takes: ["svg"] }],
  ["bag", { load: async () => oneFile((await import("./bag.ts")).bag), takes: ["svg", "seed", "workers"] }],
  ["transition", { load: async () => oneFile((await import("./transition.ts")).transition), takes: ["svg", "seed"] }],
  ["trial", { load: async () => (await import("./trial.ts")).trial, takes: ["workers"] }],
  ["delivery", { load: async () => oneFile((await import("./delivery.ts")).delivery), takes: [] }],
  ["video", { load: async () => oneFile((await import("./video.ts")).video), takes: ["taps"] }],
  ["correct", { load: async () => oneFile((await import("./correct.ts")).correct), takes: ["seed"] }],
  ["diagnose", { load: async () => oneFile((await import("./diagnose.ts")).diagnose), takes: [] }],
  ["stages", { load: async () => oneFile((await import("./stages.ts")).stages), takes: [] }],
  ["fade", { load: async () => oneFile((await import("./fade.ts")).fade), takes: ["svg"] }],
  ["readings", { load: async () => oneFile((await import("./readings.ts")).readings), takes: ["svg"] }],
  [
    "profile",
    { load: async () => (await import("./profile.ts")).profile, takes: ["svg", "cutoff", "short-cutoff", "form", "x-unit", "z-unit"] },
  ],
  ["gauge", { load: async () => oneFile((await import("./gauge.ts")).gauge), takes: [] }],
  ["padwork", { load: async () => oneFile((await import("./padwork.ts")).padwork), takes: ["svg", "seed"] }],
  ["limits", { load: async () => oneFile((await import("./limits.ts")).limits), takes: ["on", "book"] }],
  ["backup", { load: async () => (await import("./backup.ts")).backup, takes: ["due", "whole", "shop"] }],
  ["verify", { load: async () => (await import("./verify.ts")).verify, takes: [] }],
  ["restore", { load: async () => (await import("./restore.ts")).restore, takes: ["without-lost-files"] }],
  ["export", { load: async () => (await import("./export.ts")).exportAll, takes: ["shop"] }],
  ["import", { load: async () => (await import("./import.ts")).importTable, takes: ["apply", "map", "by", "shop"] }],
  ["undo", { load: async () => (await import("./import.ts")).undo, takes: ["by", "shop"] }],
  ["shops", { load: async () => (await import("./shops.ts")).shops, takes: ["add"] }],
  ["move", { load: async () => (await import("./move.ts")).move, takes: ["from", "to", "take-back"], isWordless: true }],
]);

/** Runs one command line to its end. Every fault is reported, none is thrown. */
export async function runCommandLine(args: readonly string[], world: World): Promise<ExitCode> {
  try {
    // The server has options of its own, which are a configuration file's too.
    if (args[0] === "serve") return await (await import("#server/serve")).serve(args.slice(1));
    if (args[0] === "update") return await (await import("#server/program/updateHere")).updateHere(args.slice(1));
    if (args[0] === "certificate")
      return await (await import("#server/certificate/certificateHere")).certificateHere(args.slice(1), world.now());
    return await dispatch(readOptions(args), world);
  } catch (fault) {
    return (await import("./faultReport.ts")).reportFault(fault, wantsJson(args), world);
  }
}

async function dispatch(options: Options, world: World): Promise<ExitCode> {
  if (options.help) return answer(HELP, world);
  if (options.version) return answer(`${(await import("#server/version")).programVersion()}\n`, world);
  const [name, ...files] = options.words;
  const names = [...COMMANDS.keys()].join(", ");
  if (name === undefined) throw usageFault(`Which command? One of ${names}; gritwright --help tells more.`, names);
  const command = COMMANDS.get(name);
  if (command === undefined) throw usageFault(`"${name}" is not a command. Commands: ${names}.`, names, name);
  if (files.length === 0 && command.isWordless === undefined)
    throw usageFault(`gritwright ${name} wants a file: gritwright ${name} FILE.`, "a file");
  const takes: readonly OptionName[] = ["json", ...command.takes];
  const stray = options.given.find((option) => !takes.includes(option));
  if (stray !== undefined)
    throw usageFault(`gritwright ${name} does not take --${stray}.`, takes.map((option) => `--${option}`).join(", "), stray);
  (await import("#tasks/kernel/vectorKernel")).bringVectorKernel();
  return (await command.load())(files, options, world);
}

/** A command that takes one file and no more. */
function oneFile(command: (file: string, options: Options, world: World) => Promise<ExitCode>): Command {
  return ([file, ...rest], options, world) => {
    if (rest.length > 0) throw usageFault(`${options.words[0]} takes one file; "${rest[0]}" is one too many.`, "one file", rest[0]);
    return command(file, options, world);
  };
}

function answer(text: string, world: World): ExitCode {
  world.print(text);
  return 0;
}
