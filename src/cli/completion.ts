import { COMMANDS, type CommandSaid, OTHERS } from "./commandTable.ts";
import { type OptionName, saidOf } from "./optionTable.ts";
import { usageFault } from "./usageFault.ts";
import type { ExitCode, World } from "./world.ts";

const SHELLS = { bash, zsh, fish };

/** `gritwright completion SHELL`: a script by which a shell completes commands, options and file names. */
export async function completion([shell, ...more]: readonly string[], world: World): Promise<ExitCode> {
  const names = Object.keys(SHELLS).join(", ");
  if (more.length > 0 || shell === undefined || !Object.hasOwn(SHELLS, shell))
    throw usageFault(`For which shell? gritwright completion ${names.replaceAll(", ", "|")}.`, names, shell ?? null);
  world.print(SHELLS[shell as keyof typeof SHELLS]());
  return 0;
}

interface Completed {
  readonly name: string;
  readonly says: string;
  readonly options: readonly string[];
}

/** Every command with the options it takes. */
function all(): Completed[] {
  const own = Object.entries(COMMANDS).map(([name, said]: [string, CommandSaid]) => ({
    name,
    says: said.says,
    options: ["json" as OptionName, ...said.takes].map((option) => `--${option}`).concat("--help"),
  }));
  return [...own, ...Object.entries(OTHERS).map(([name, { says, options }]) => ({ name, says, options: [...options, "--help"] }))];
}

/** The few words that are all an option may be given. */
function wordsOf(option: string): readonly string[] {
  const name = option.slice(2);
  return isKnown(name) ? (saidOf(name).words ?? []) : [];
}

function isKnown(name: string): name is OptionName {
  return Object.values(COMMANDS).some(({ takes }: CommandSaid) => takes.includes(name as OptionName));
}

function optionsWithWords(): string[] {
  return [...new Set(all().flatMap(({ options }) => options))].filter((option) => wordsOf(option).length > 0);
}

function bash(): string {
  const cases = all().map(({ name, options }) => `    ${name}) options="${options.join(" ")}" ;;`);
  const values = optionsWithWords().map(
    (option) => `    ${option}) COMPREPLY=($(compgen -W "${wordsOf(option).join(" ")}" -- "$word")); return ;;`,
  );
  return `# Completion of gritwright for bash.
_gritwright() {
  local word="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" options
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${all()
      .map(({ name }) => name)
      .join(" ")} --help --version" -- "$word"))
    return
  fi
  case "$before" in
${values.join("\n")}
  esac
  case "\${COMP_WORDS[1]}" in
${cases.join("\n")}
  esac
  case "$word" in
    -*) COMPREPLY=($(compgen -W "$options" -- "$word")) ;;
    *) if [ "\${COMP_WORDS[1]}" = completion ]; then COMPREPLY=($(compgen -W "${Object.keys(SHELLS).join(" ")}" -- "$word")); else COMPREPLY=($(compgen -f -- "$word")); fi ;;
  esac
}
complete -o filenames -F _gritwright gritwright
`;
}

function zsh(): string {
  const quoted = (text: string) => text.replaceAll("'", "'\\''").replaceAll(":", "\\:");
  const commands = all().map(({ name, says }) => `    '${name}:${quoted(says)}'`);
  const cases = all().map(({ name, options }) => `    ${name}) options=(${options.join(" ")}) ;;`);
  const values = optionsWithWords().map((option) => `    ${option}) compadd -- ${wordsOf(option).join(" ")}; return ;;`);
  return `#compdef gritwright
# Completion of gritwright for zsh.
_gritwright() {
  local -a commands options
  commands=(
${commands.join("\n")}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    compadd -- --help --version
    return
  fi
  case "$words[CURRENT-1]" in
${values.join("\n")}
  esac
  case "$words[2]" in
${cases.join("\n")}
  esac
  if [[ "$words[CURRENT]" == -* ]]; then
    compadd -- $options
  elif [[ "$words[2]" == completion ]]; then
    compadd -- ${Object.keys(SHELLS).join(" ")}
  else
    _files
  fi
}
if [[ "$funcstack[1]" == _gritwright ]]; then _gritwright "$@"; else compdef _gritwright gritwright; fi
`;
}

function fish(): string {
  const quoted = (text: string) => `'${text.replaceAll("\\", "\\\\").replaceAll("'", "\\'")}'`;
  const lines = all().flatMap(({ name, says, options }) => [
    `complete -c gritwright -n __fish_use_subcommand -f -a ${name} -d ${quoted(says)}`,
    ...options.map((option) => {
      const words = wordsOf(option);
      const values = words.length === 0 ? "" : ` -x -a ${quoted(words.join(" "))}`;
      return `complete -c gritwright -n '__fish_seen_subcommand_from ${name}' -l ${option.slice(2)}${values}`;
    }),
  ]);
  return `# Completion of gritwright for fish.
${lines.join("\n")}
complete -c gritwright -n '__fish_seen_subcommand_from completion' -f -a '${Object.keys(SHELLS).join(" ")}'
`;
}
