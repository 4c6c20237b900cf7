/** Vectors and unit quaternions as short tuples. Quaternions are (w, x, y, z) and turn body coordinates into space. */
export type Vector = readonly [number, number, number];
export type Quaternion = readonly [number, number, number, number];

export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

export function length(a: Vector): number {
  return Math.hypot(a[0], a[1], a[2]);
}

/** A vector of length 0 has no direction; it is returned as it is. */
export function unit(a: Vector): Vector {
  const size = length(a);
  return size > 0 ? [a[0] / size, a[1] / size, a[2] / size] : a;
}

/** Turns a body vector into space. */
export function rotate(q: Quaternion, v: Vector): Vector {
  const axis: Vector = [q[1], q[2], q[3]];
  const twice = cross(axis, v).map((c) => 2 * c) as unknown as Vector;
  const again = cross(axis, twice);
  return [v[0] + q[0] * twice[0] + again[0], v[1] + q[0] * twice[1] + again[1], v[2] + q[0] * twice[2] + again[2]];
}

export function conjugate(q: Quaternion): Quaternion {
  return [q[0], -q[1], -q[2], -q[3]];
}

export function multiply(a: Quaternion, b: Quaternion): Quaternion {
  return [
    a[0] * b[0] - a[1] * b[1] - a[2] * b[2] - a[3] * b[3],
    a[0] * b[1] + a[1] * b[0] + a[2] * b[3] - a[3] * b[2],
    a[0] * b[2] - a[1] * b[3] + a[2] * b[0] + a[3] * b[1],
    a[0] * b[3] + a[1] * b[2] - a[2] * b[1] + a[3] * b[0],
  ];
}

export function aboutAxis(axis: Vector, angle: number): Quaternion {
  const [x, y, z] = unit(axis);
  const sin = Math.sin(angle / 2);
  return [Math.cos(angle / 2), x * sin, y * sin, z * sin];
}

/** The shortest turn that takes unit vector a to unit vector b. */
export function turnBetween(a: Vector, b: Vector): Quaternion {
  const cosine = dot(a, b);
  if (cosine < -1 + 1e-12) return aboutAxis(Math.abs(a[0]) < 0.9 ? cross(a, [1, 0, 0]) : cross(a, [0, 1, 0]), Math.PI);
  const axis = cross(a, b);
  const size = Math.sqrt((1 + cosine) * 2);
  return [size / 2, axis[0] / size, axis[1] / size, axis[2] / size];
}
