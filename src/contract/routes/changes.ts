import { z } from "zod";
import { mapping } from "../job/fields.ts";

/**
 * What a change may say: each field may be left out, and what is left out stays as it is. So no field has a usual value here, or
 * leaving it out would reset it.
 */
export function changesOf<S extends z.ZodObject>(written: S): z.ZodType<Partial<z.output<S>>, Partial<z.input<S>>> {
  const fields = Object.entries(written.shape).map(([name, field]) => [name, z.optional(withoutDefault(field as z.ZodType))]);
  return mapping(Object.fromEntries(fields), `Changes of: ${written.description ?? ""}`) as unknown as z.ZodType<
    Partial<z.output<S>>,
    Partial<z.input<S>>
  >;
}

function withoutDefault(field: z.ZodType): z.ZodType {
  return field instanceof z.ZodDefault ? (field.unwrap() as z.ZodType) : field;
}
