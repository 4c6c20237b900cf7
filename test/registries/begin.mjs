// As the page begins: a language first, then what reads words.
import { takeLanguage } from "virtual:catalogue";

await takeLanguage(process.argv[2]);
await import("./forms.tsx");
