// As the page begins: a language first, then what reads words.
import { takeLanguage, takeRest } from "virtual:catalogue";

await takeLanguage(process.argv[2]);

await takeRest();
await import("./forms.tsx");
