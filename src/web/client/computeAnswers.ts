import { EngineFault, type Problem } from "#engine/fault";
import { bringVectorKernel } from "#tasks/kernel/vectorKernel";
import { runUnit } from "#tasks/runUnit";
import { bagRequest, drawBag } from "./bagCalls.ts";
import { diagnosed } from "./diagnoseCall.ts";
import { drawOil } from "./drawOil.ts";
import { drawPadWork } from "./drawPadWork.ts";
import { drawPictures } from "./drawPictures.ts";
import { measuredDelivery } from "./measureCalls.ts";
import { fieldProblem, planRequest, readJob } from "./planRequest.ts";
import { predictedOf } from "./predictCall.ts";
import type { Answer, Call, ReplyTo } from "./protocol.ts";
import { tellLeaves } from "./tellLeaves.ts";
import { drawPlayedGame, drawPlayedStrips, transitionRequest } from "./transitionCalls.ts";

bringVectorKernel();

export async function answerTo(number: number, call: Call): Promise<Answer> {
  try {
    return { number, reply: await replyTo(call) };
  } catch (error) {
    const problems = error instanceof EngineFault ? error.problems.map((p: Problem) => fieldProblem(p)) : null;
    return { number, problems, failed: error instanceof Error ? error.message : String(error) };
  }
}

function replyTo(call: Call): ReplyTo<Call> | Promise<ReplyTo<Call>> {
  switch (call.kind) {
    case "ask":
      return planRequest(call.job);
    case "read":
      return readJob(call.bytes);
    case "unit":
      return runUnit(call.unit);
    case "pictures":
      return drawPictures(call.wanted);
    case "predict":
      return predictedOf(call.wanted);
    case "padWork":
      return drawPadWork(call.wanted);
    case "profile":
      // What reads testers' files is loaded where one is opened.
      return import("./readProfile.ts").then(({ readProfile }) => readProfile(call.name, call.bytes, call.options));
    case "diagnose":
      return diagnosed(call.file);
    case "trial":
      return import("./trialCall.ts").then(({ trialAnswer }) => trialAnswer(call.job));
    case "correctHouse":
      // Asked for seldom, and no small part of the engine.
      return import("./correctCall.ts").then(({ houseAnswer }) => houseAnswer(call.file));
    case "askBag":
      return bagRequest(call.file, call.today);
    case "bagPicture":
      return drawBag(call.plan);
    case "measureDelivery":
      return measuredDelivery(call.file);
    case "askTransition":
      return transitionRequest(call.file);
    case "playedGame":
      return drawPlayedGame(call.played, call.title);
    case "playedStrips":
      return drawPlayedStrips(call.played);
    case "oil":
      return drawOil(call.oil, call.title);
    case "leaves":
      return tellLeaves(call.seen, call.hand);
  }
}
