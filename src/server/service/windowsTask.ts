import { xmlText } from "./xmlText.ts";

/**
 * The text of a task for Windows' scheduler, by the Task Scheduler Schema 1.2. It starts with the machine, as its user, who need not be signed in and whose
 * password is not kept (S4U). A program that ended with a fault has not failed to start, in the scheduler's eyes: so it is looked for every five minutes,
 * and one that runs is left alone.
 */
export function windowsTask(userName: string, command: readonly string[], logFile: string): string {
  // The scheduler keeps nothing of what a program says; a shell writes it down.
  const line = `/d /s /c "${[...command.map(quoted), ">>", quoted(logFile), "2>&1"].join(" ")}"`;
  return `<?xml version="1.0" encoding="UTF-16"?>
<Task version="1.2" xmlns="http://schemas.microsoft.com/windows/2004/02/mit/task">
  <RegistrationInfo>
    <Description>Gritwright, the pro shop's records and page</Description>
  </RegistrationInfo>
  <Triggers>
    <BootTrigger>
      <Repetition>
        <Interval>PT5M</Interval>
      </Repetition>
      <Enabled>true</Enabled>
    </BootTrigger>
  </Triggers>
  <Principals>
    <Principal id="Author">
      <UserId>${xmlText(userName)}</UserId>
      <LogonType>S4U</LogonType>
      <RunLevel>LeastPrivilege</RunLevel>
    </Principal>
  </Principals>
  <Settings>
    <MultipleInstancesPolicy>IgnoreNew</MultipleInstancesPolicy>
    <DisallowStartIfOnBatteries>false</DisallowStartIfOnBatteries>
    <StopIfGoingOnBatteries>false</StopIfGoingOnBatteries>
    <StartWhenAvailable>true</StartWhenAvailable>
    <ExecutionTimeLimit>PT0S</ExecutionTimeLimit>
    <Enabled>true</Enabled>
    <RestartOnFailure>
      <Interval>PT1M</Interval>
      <Count>255</Count>
    </RestartOnFailure>
  </Settings>
  <Actions Context="Author">
    <Exec>
      <Command>cmd.exe</Command>
      <Arguments>${xmlText(line)}</Arguments>
    </Exec>
  </Actions>
</Task>
`;
}

/** A word for the shell: no file name of Windows has a quote in it, and a percent sign is not replaced between letters that name no variable. */
function quoted(word: string): string {
  return `"${word}"`;
}
