import { Command, CommanderError, Option } from "commander";
import { nearestWord } from "#contract/nearest";
import { COMMANDS, type CommandName, type CommandSaid } from "./commandTable.ts";
import { OPTIONS, type OptionName, saidOf } from "./optionTable.ts";
import { usageFault } from "./usageFault.ts";

/** A line as it was written: what each option was given, checked for nothing yet. */
export interface Line {
  readonly words: readonly string[];
  readonly given: Readonly<Partial<Record<OptionName, string | true>>>;
}

/**
 * Reads the line of one command.
 *
 * @returns null where its help was asked for, and was printed
 * @throws {JobFault} code `usage` for an option that is not known, is not this command's, or lacks its value
 */
export function parseLine(name: CommandName, args: readonly string[], print: (text: string) => void): Line | null {
  const said: CommandSaid = COMMANDS[name];
  const command = commandOf(name, said).configureOutput({ writeOut: print, writeErr: () => {} });
  try {
    command.parse([...args], { from: "user" });
  } catch (fault) {
    if (!(fault instanceof CommanderError)) throw fault;
    if (fault.code === "commander.helpDisplayed") return null;
    throw usageFault(
      sentenceOf(name, said, fault),
      optionsOf(said)
        .map((option) => `--${option}`)
        .join(", "),
      args.join(" "),
    );
  }
  const values = new Map(command.options.map((option) => [option.long?.slice(2), command.getOptionValue(option.attributeName())]));
  const given = Object.fromEntries([...values].filter(([, value]) => value !== undefined));
  return { words: command.args, given };
}

function commandOf(name: string, said: CommandSaid): Command {
  const command = new Command(`gritwright ${name}`)
    .usage(`${said.words} [options]`)
    .description(`${said.says[0].toUpperCase()}${said.says.slice(1)}.`)
    .argument("[words...]")
    .helpOption("-h, --help", "this text")
    .showSuggestionAfterError(false)
    .exitOverride()
    .configureHelp({ visibleArguments: () => [] });
  for (const option of optionsOf(said)) command.addOption(optionOf(option));
  return command.addHelpText("after", `\nExamples:\n${said.examples.map((example) => `  gritwright ${name} ${example}\n`).join("")}`);
}

function optionOf(name: OptionName): Option {
  const { value, says } = saidOf(name);
  const option = new Option(value === undefined ? `--${name}` : `--${name} <${value}>`, says);
  if (value !== undefined) option.argParser((text) => notAnOption(name, text));
  return option;
}

/** Whoever leaves a value out does not want the next option in its place. */
function notAnOption(name: OptionName, text: string): string {
  if (!text.startsWith("-") || text === "-") return text;
  throw usageFault(`Option --${name} wants a value that is not another option; a negative number is not allowed.`, "a value", text);
}

function optionsOf({ takes }: CommandSaid): readonly OptionName[] {
  return ["json", ...takes];
}

function sentenceOf(name: string, said: CommandSaid, { code, message }: CommanderError): string {
  const [, option = ""] = /'--([\w-]+)/.exec(message) ?? [];
  if (code === "commander.unknownOption" && option in OPTIONS) return `gritwright ${name} does not take --${option}.`;
  const meant = nearestWord(option, [...optionsOf(said), "help"]);
  const hint = meant === null || meant === option ? "" : ` Did you mean --${meant}?`;
  const words = message.replace(/^error: /, "");
  return `${words[0].toUpperCase()}${words.slice(1)}.${hint} gritwright ${name} --help tells more.`;
}
