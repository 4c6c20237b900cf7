import { programVersion } from "#server/version";
import { backup } from "./backup.ts";
import { bag } from "./bag.ts";
import { carry } from "./carry.ts";
import { correct } from "./correct.ts";
import { delivery } from "./delivery.ts";
import { diagnose } from "./diagnose.ts";
import { exportAll } from "./export.ts";
import { fade } from "./fade.ts";
import { reportFault } from "./faultReport.ts";
import { gauge } from "./gauge.ts";
import { HELP } from "./help.ts";
import { importTable, undo } from "./import.ts";
import { limits } from "./limits.ts";
import { move } from "./move.ts";
import { type OptionName, type Options, readOptions, usageFault, wantsJson } from "./options.ts";
import { padwork } from "./padwork.ts";
import { plan } from "./plan.ts";
import { profile } from "./profile.ts";
import { readings } from "./readings.ts";
import { restore } from "./restore.ts";
import { shops } from "./shops.ts";
import { shot } from "./shot.ts";
import { stages } from "./stages.ts";
import { transition } from "./transition.ts";
import { trial } from "./trial.ts";
import { verify } from "./verify.ts";
import { video } from "./video.ts";
import type { ExitCode, World } from "./world.ts";

type Command = (files: readonly string[], options: Options, world: World) => Promise<ExitCode>;

interface Entry {
  readonly run: Command;
  /** Options that it takes besides `--json`. */
  readonly takes: readonly OptionName[];
  /** It is told everything by its options. */
  readonly isWordless?: true;
}

/** A command is its own file and one line here. */
const COMMANDS = new Map<string, Entry>([
  ["plan", { run: oneFile(plan), takes: ["svg", "seed", "workers"] }],
  ["shot", { run: oneFile(shot), takes: ["svg", "seed", "at"] }],
  ["carry", { run: oneFile(carry), takes: ["svg"] }],
  ["bag", { run: oneFile(bag), takes: ["svg", "seed", "workers"] }],
  ["transition", { run: oneFile(transition), takes: ["svg", "seed"] }],
  ["trial", { run: trial, takes: ["workers"] }],
  ["delivery", { run: oneFile(delivery), takes: [] }],
  ["video", { run: oneFile(video), takes: ["taps"] }],
  ["correct", { run: oneFile(correct), takes: ["seed"] }],
  ["diagnose", { run: oneFile(diagnose), takes: [] }],
  ["stages", { run: oneFile(stages), takes: [] }],
  ["fade", { run: oneFile(fade), takes: ["svg"] }],
  ["readings", { run: oneFile(readings), takes: ["svg"] }],
  ["profile", { run: profile, takes: ["svg", "cutoff", "short-cutoff", "form", "x-unit", "z-unit"] }],
  ["gauge", { run: oneFile(gauge), takes: [] }],
  ["padwork", { run: oneFile(padwork), takes: ["svg", "seed"] }],
  ["limits", { run: oneFile(limits), takes: ["on", "book"] }],
  ["backup", { run: backup, takes: ["due", "whole", "shop"] }],
  ["verify", { run: verify, takes: [] }],
  ["restore", { run: restore, takes: ["without-lost-files"] }],
  ["export", { run: exportAll, takes: ["shop"] }],
  ["import", { run: importTable, takes: ["apply", "map", "by", "shop"] }],
  ["undo", { run: undo, takes: ["by", "shop"] }],
  ["shops", { run: shops, takes: ["add"] }],
  ["move", { run: move, takes: ["from", "to", "take-back"], isWordless: true }],
]);

/** Runs one command line to its end. Every fault is reported, none is thrown. */
export async function runCommandLine(args: readonly string[], world: World): Promise<ExitCode> {
  try {
    return await dispatch(readOptions(args), world);
  } catch (fault) {
    return reportFault(fault, wantsJson(args), world);
  }
}

async function dispatch(options: Options, world: World): Promise<ExitCode> {
  if (options.help) return answer(HELP, world);
  if (options.version) return answer(`${programVersion()}\n`, world);
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
  return command.run(files, options, world);
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
