import { type ChildProcess, fork } from "node:child_process";
import { availableParallelism } from "node:os";
import { join } from "node:path";
import type { Asked, Said } from "./pointWorker.ts";

/** Asks many worlds, on as many cores as there are; the answers in the order of the questions. */
export async function askAll(questions: readonly Asked[], onNews: (done: number) => void): Promise<readonly Said[]> {
  const answers = new Map<number, Said>();
  let next = 0;
  const asks = (child: ChildProcess) =>
    new Promise<void>((resolve, reject) => {
      const send = () => {
        if (next < questions.length) child.send(questions[next++]);
        else resolve();
      };
      child.on("error", reject);
      child.on("exit", (code) => reject(new Error(`A process that asks worlds ended with ${code}.`)));
      child.on("message", (said: Said) => {
        answers.set(said.id, said);
        onNews(answers.size);
        send();
      });
      send();
    });
  const children = Array.from({ length: availableParallelism() }, () =>
    fork(join(import.meta.dirname, "pointWorker.ts"), { execArgv: ["--conditions=source", "--import", "tsx"], serialization: "advanced" }),
  );
  await Promise.all(children.map(asks));
  for (const child of children) child.removeAllListeners("exit").kill();
  return questions.map(({ id }) => answers.get(id) as Said);
}
