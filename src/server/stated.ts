type Stated<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** Without the keys that hold nothing, so that they do not hide a usual value. */
export function stated<T extends object>(given: T): Stated<T> {
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined)) as Stated<T>;
}
