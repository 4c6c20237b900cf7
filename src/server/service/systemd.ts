/** The text of a systemd unit, by systemd.unit(5) and systemd.service(5). */
export function systemdUnit(command: readonly string[], kind: "system" | "user"): string {
  // A user's own manager knows nothing of the machine's network.
  const network = kind === "system" ? ["After=network-online.target", "Wants=network-online.target"] : [];
  return lines(
    "[Unit]",
    "Description=Gritwright, the pro shop's records and page",
    ...network,
    // A shop whose database server comes up late is to be tried for as long as it takes.
    "StartLimitIntervalSec=0",
    "",
    "[Service]",
    "Type=exec",
    `ExecStart=${command.map(quoted).join(" ")}`,
    "Restart=on-failure",
    "RestartSec=5",
    // What cannot be used does not become usable by being read again.
    "RestartPreventExitStatus=2",
    // The server hands a stop on to what it has started; all the others would take it for a second one, which does not wait.
    "KillMode=mixed",
    "TimeoutStopSec=30",
    "UMask=0077",
    "NoNewPrivileges=yes",
    "",
    "[Install]",
    `WantedBy=${kind === "system" ? "multi-user.target" : "default.target"}`,
  );
}

/** A word of a command line: quoted, C's escapes for quotes and backslashes, and what systemd would replace, `%` and `$`, twice. */
function quoted(word: string): string {
  return `"${word.replace(/[\\"]/g, "\\$&").replace(/%/g, "%%").replace(/\$/g, "$$$$").replace(/\n/g, "\\n").replace(/\t/g, "\\t")}"`;
}

function lines(...all: string[]): string {
  return `${all.join("\n")}\n`;
}
