import type { OptionName } from "./optionTable.ts";

/** What help and completion know of a command; what it does is its own file, named in commandLine.ts. */
export interface CommandSaid {
  /** The words that follow it. */
  readonly words: string;
  readonly says: string;
  /** Options that it takes besides `--json`. */
  readonly takes: readonly OptionName[];
  readonly examples: readonly string[];
  /** It is told everything by its options. */
  readonly isWordless?: true;
}

const ofFile = (says: string, example: string, takes: readonly OptionName[] = [], ...more: string[]): CommandSaid => ({
  words: "FILE",
  says,
  takes,
  examples: [`examples/${example}`, ...more, `${more.length > 0 ? `examples/${example}` : "-"} --json`],
});

export const COMMANDS = {
  plan: ofFile(
    "compare finishes for one ball, bowler and lane, and pick one",
    "league-night.yaml",
    ["svg", "seed", "workers", "worlds"],
    "examples/league-night.yaml --svg lane.svg",
    "- < job.yaml",
  ),
  shot: ofFile(
    "follow one shot from the foul line to the pins",
    "one-shot.yaml",
    ["svg", "seed", "at"],
    "examples/one-shot.yaml --at 15,45,60",
    "examples/one-shot.yaml --svg - > lane.svg",
  ),
  carry: ofFile("say how pins fall at a hit, and which hits explain what was left", "carry.yaml", ["svg"]),
  bag: ofFile("which ball with which finish, at which stage of a session", "bag.yaml", ["svg", "seed", "workers"]),
  transition: ofFile("what play does to the oil, game by game", "transition.yaml", ["svg", "seed"]),
  trial: {
    words: "TRIAL [JOB]",
    says: "where one ball arrived on one line with some finishes, and what that says for the plan",
    takes: ["workers"],
    examples: ["examples/trial.yaml", "examples/trial.yaml examples/league-night.yaml"],
  },
  delivery: ofFile("a bowler's speed, revs, axis and positive axis point from filmed shots", "delivery.yaml"),
  video: ofFile(
    "a shot's course, speed and angles from where a video shows lane and ball",
    "video-sightings.yaml",
    ["taps"],
    "film.mp4 --taps taps.yaml",
  ),
  correct: ofFile("what the shots seen in a house say of its oil and lanes", "correct.yaml", ["seed"]),
  diagnose: ofFile("what may be wrong, and the cheapest step that tells", "diagnose.yaml"),
  stages: ofFile("write the bench work of a ball or a batch, or check a recipe", "bench-batch.yaml"),
  fade: ofFile("follow a finish over the games, and say what is due when", "fade.yaml", ["svg"]),
  readings: ofFile("say whether the sides agree, and which to go back to", "readings-by-side.yaml", ["svg"]),
  profile: {
    words: "FILE…",
    says: "roughness from measured profiles: CSV, TXT, X3P, SMD",
    takes: ["svg", "cutoff", "short-cutoff", "form", "x-unit", "z-unit"],
    examples: ["examples/profile-1000-pad.csv", "examples/profile-1000-pad.csv --cutoff 0.25 --json"],
  },
  gauge: ofFile("how far a tester and the people who use it can be believed", "gauge-study.yaml"),
  padwork: ofFile("say how evenly pads work a ball, and what each side does in it", "pad-work.yaml", ["svg", "seed"]),
  limits: ofFile(
    "hold a ball's measures against a rule book of a day, and an event's rules",
    "limits.yaml",
    ["on", "book"],
    "examples/limits.yaml --on 2026-05-31",
  ),
  backup: {
    words: "FOLDER, or ADDRESS FOLDER",
    says: "back up a shop's records, also while they are used",
    takes: ["due", "whole", "shop"],
    examples: ["~/.local/share/gritwright/shop", "~/.local/share/gritwright/shop --whole", "postgres://gritwright@127.0.0.1/shops backups"],
  },
  verify: { words: "FILE", says: "read a backup through and compare its checksums", takes: [], examples: ["backups/shop.zip"] },
  restore: {
    words: "FILE FOLDER",
    says: "put a backup in the place of a shop's records, which stay beside it",
    takes: ["without-lost-files"],
    examples: ["backups/shop.zip restored"],
  },
  export: { words: "FOLDER INTO", says: "write everything that is kept as JSON and tables", takes: ["shop"], examples: ["shop tables"] },
  import: {
    words: "KIND FILE FOLDER",
    says: "show what a table of bowlers or balls would add, or add it",
    takes: ["apply", "map", "by", "shop"],
    examples: [
      "bowlers customers.csv shop",
      'bowlers customers.csv shop --map "Customer=name,Tel=phone" --apply',
      "balls - shop < balls.csv",
    ],
  },
  undo: { words: "ID FOLDER", says: "take out what an import added", takes: ["by", "shop"], examples: ["0197… shop"] },
  shops: {
    words: "FOLDER",
    says: "list the shops that share a database, or add one",
    takes: ["add"],
    examples: ["postgres://gritwright@127.0.0.1/shops", 'postgres://gritwright@127.0.0.1/shops --add "East Side"'],
  },
  move: {
    words: "--from PLACE --to PLACE",
    says: "move everything elsewhere, checked row by row",
    takes: ["from", "to", "take-back"],
    examples: ["--from shop --to postgres://gritwright@127.0.0.1/shops", "--take-back --from shop"],
    isWordless: true,
  },
} as const satisfies Record<string, CommandSaid>;

export type CommandName = keyof typeof COMMANDS;

/** Commands that read the rest of their line themselves: its options are a configuration's, or few. */
export const OTHERS = {
  serve: {
    usage: "[OPTIONS]",
    says: "serve the page and the records",
    options: [
      "--own",
      "--demonstration",
      "--data",
      "--port",
      "--config",
      "--no-open",
      "--address",
      "--cert",
      "--key",
      "--name",
      "--set-password",
      "--move-records",
      "--install-service",
      "--uninstall-service",
    ],
    help: `  --own, --demonstration    your own shop, or the invented one
  --data FOLDER             where the shops lie; usually the user's own folder for data
  --port N                  usually 4780, or the next that is free
  --config FILE             everything that can be set, in YAML or JSON; see docs/server.md
  --no-open                 open no browser
  --address ADDRESS --cert FILE --key FILE --name NAME…   serve the shop's network
  --set-password NAME       set a password, which is typed or comes from standard input, and end
  --move-records            move a shop that lies in an older folder
  --install-service, --uninstall-service   start with the machine, or no more`,
    examples: [
      "",
      "--own",
      "--own --install-service",
      "--own --address 0.0.0.0 --cert keys/cert.pem --key keys/key.pem --name gritwright.home.arpa",
    ],
  },
  update: {
    usage: "FILE.tgz [OPTIONS OF serve]",
    says: "bring in a newer version, and go back by itself where it is not well",
    options: ["--own", "--data", "--config"],
    help: "  --own, --data FOLDER, --config FILE   which shop is backed up and tried on; without any, the service's, else your own",
    examples: ["gritwright-0.2.0.tgz"],
  },
  certificate: {
    usage: "FOLDER --name NAME…",
    says: "make the certificate for the shop's network, and the authority that tablets trust",
    options: ["--name"],
    help: "  --name NAME               a name of home.arpa, or an address of the shop's network; once each",
    examples: ["keys --name gritwright.home.arpa --name 192.168.1.20"],
  },
  completion: {
    usage: "bash | zsh | fish",
    says: "print what makes a shell complete commands, options and files",
    options: [],
    help: "  The script goes where the shell reads it at its start.",
    examples: [
      "bash > ~/.local/share/bash-completion/completions/gritwright",
      "zsh > ~/.zsh/functions/_gritwright",
      "fish > ~/.config/fish/completions/gritwright.fish",
    ],
  },
} as const;
