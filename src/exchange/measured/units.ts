/** Factors to metres of the length units that measured files use. */
export const METRES: Readonly<Record<string, number>> = {
  m: 1,
  mm: 1e-3,
  um: 1e-6,
  µm: 1e-6,
  μm: 1e-6,
  nm: 1e-9,
  in: 0.0254,
  uin: 0.0254e-6,
  µin: 0.0254e-6,
};

export const UNIT_NAMES = "m, mm, um, nm, in, uin";
