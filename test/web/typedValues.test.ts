import { expect, it } from "vitest";
import { figureOrNull, typedOf } from "../../src/web/shop/typedValues.ts";

it("a figure stands in its field as somebody would type it, without the noise of reckoning", () => {
  expect(typedOf(2.47 * 3 - 2.47 * 2)).toBe("2.47");
  expect([typedOf(null), typedOf(undefined), typedOf(0), typedOf("a")]).toEqual(["", "", "0", "a"]);
});

it("what is typed with a comma or a true minus is a figure; what is none goes to the shop as it is", () => {
  expect([figureOrNull("14,5"), figureOrNull("−3"), figureOrNull(" "), figureOrNull("abc")]).toEqual([14.5, -3, null, "abc"]);
});
