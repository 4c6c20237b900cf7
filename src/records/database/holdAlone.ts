import type { ShopFolder } from "../folder.ts";
import { closeToOthers, openSqlite } from "./sqlite.ts";

/**
 * Has the database alone until it is let go: who opened it while it is put aside would write into the safety copy. Leaving WAL mode puts everything into one
 * file, so that the copy is whole. A damaged file is kept as it is.
 */
export function holdAlone({ database }: ShopFolder): () => void {
  try {
    const { raw } = openSqlite(database);
    try {
      closeToOthers(raw);
    } catch (error) {
      raw.close();
      throw error;
    }
    // Windows renames no folder in which a file is open, whoever has it open: nobody can come between there.
    if (process.platform !== "win32") return () => raw.close();
    raw.close();
  } catch (error) {
    const code = error instanceof Error && "code" in error ? String(error.code) : "";
    if (!code.startsWith("SQLITE_CORRUPT") && code !== "SQLITE_NOTADB") throw error;
  }
  return () => {};
}
