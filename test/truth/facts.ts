import type { Fact } from "./fact.ts";
import { ABRASIVE_FACTS } from "./facts/abrasives.ts";
import { BANDS } from "./facts/bands.ts";
import { CARRY_FACTS } from "./facts/carry.ts";
import { DELIVERY_FACTS } from "./facts/delivery.ts";
import { LANE } from "./facts/lane.ts";
import { MOTION } from "./facts/motion.ts";
import { PAD_WORK_FACTS } from "./facts/padWork.ts";
import { ROUGHNESS } from "./facts/roughness.ts";
import { RULE_BOOK_FACTS } from "./facts/ruleBooks.ts";
import { STATISTICS } from "./facts/statistics.ts";
import { TOP } from "./facts/top.ts";

export const FACTS: readonly Fact[] = [
  ...LANE,
  ...MOTION,
  ...TOP,
  ...BANDS,
  ...CARRY_FACTS,
  ...DELIVERY_FACTS,
  ...ABRASIVE_FACTS,
  ...PAD_WORK_FACTS,
  ...RULE_BOOK_FACTS,
  ...ROUGHNESS,
  ...STATISTICS,
];
