import { xmlText } from "./xmlText.ts";

/** The text of a property list for launchd, by launchd.plist(5). */
export function launchdPlist(label: string, command: readonly string[], logFile: string): string {
  const words = command.map((word) => `    <string>${xmlText(word)}</string>`).join("\n");
  return `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE plist PUBLIC "-//Apple//DTD PLIST 1.0//EN" "http://www.apple.com/DTDs/PropertyList-1.0.dtd">
<plist version="1.0">
<dict>
  <key>Label</key>
  <string>${xmlText(label)}</string>
  <key>ProgramArguments</key>
  <array>
${words}
  </array>
  <key>RunAtLoad</key>
  <true/>
  <key>KeepAlive</key>
  <dict>
    <key>SuccessfulExit</key>
    <false/>
  </dict>
  <key>ThrottleInterval</key>
  <integer>10</integer>
  <key>ExitTimeOut</key>
  <integer>30</integer>
  <key>Umask</key>
  <integer>63</integer>
  <key>StandardOutPath</key>
  <string>${xmlText(logFile)}</string>
  <key>StandardErrorPath</key>
  <string>${xmlText(logFile)}</string>
</dict>
</plist>
`;
}
