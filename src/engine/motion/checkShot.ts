import { radiiOfGyrationIn } from "../ball/body.ts";
import { EngineFault, type Problem } from "../fault.ts";
import type { ShotSetup } from "./shot.ts";

/** Refuses what is not physical, every field at once. Rule-book limits are not checked here: they only warn. */
export function checkShot(setup: ShotSetup): void {
  const { bowler, ball, line, model } = setup;
  const radii = radiiOfGyrationIn(ball);
  const problems: Problem[] = [];
  const need = (path: string, value: number, allowed: string, ok: boolean) => {
    if (!Number.isFinite(value) || !ok) problems.push({ path, value, allowed });
  };
  need("bowler.speedMph", bowler.speedMph, "more than 0", bowler.speedMph > 0);
  need("bowler.revRateRpm", bowler.revRateRpm, "0 or more", bowler.revRateRpm >= 0);
  need("bowler.axisRotationDeg", bowler.axisRotationDeg, "-180 to 180", Math.abs(bowler.axisRotationDeg) <= 180);
  need("bowler.axisTiltDeg", bowler.axisTiltDeg, "-90 to 90", Math.abs(bowler.axisTiltDeg) <= 90);
  need("line.launchAngleDeg", line.launchAngleDeg, "-60 to 60", Math.abs(line.launchAngleDeg) <= 60);
  need("line.laydownBoard", line.laydownBoard, "a number", true);
  need("ball.massLb", ball.massLb, "more than 0", ball.massLb > 0);
  need("ball.diameterIn", ball.diameterIn, "more than 0", ball.diameterIn > 0);
  for (const [i, rg] of radii.entries()) {
    const path = ball.principalRgIn ? `ball.principalRgIn.${i}` : "ball.rgIn";
    need(path, rg, "more than 0, less than the ball's radius", rg > 0 && rg < ball.diameterIn / 2);
  }
  need(
    "model.slipRegularisationMps",
    model.slipRegularisationMps,
    "1e-6 to 1",
    model.slipRegularisationMps >= 1e-6 && model.slipRegularisationMps <= 1,
  );
  need("model.rollingResistance", model.rollingResistance, "0 to 0.5", model.rollingResistance >= 0 && model.rollingResistance <= 0.5);
  need("model.gravity", model.gravity, "more than 0", model.gravity > 0);
  need("model.startFt", model.startFt, "0 to 59", model.startFt >= 0 && model.startFt <= 59);
  for (const [i, ft] of setup.atFt.entries()) need(`atFt.${i}`, ft, "0 to 60", ft >= 0 && ft <= 60);
  if (problems.length > 0) throw new EngineFault(problems);
}
