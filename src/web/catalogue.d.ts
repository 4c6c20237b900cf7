/** Made when the page is built: the catalogues of all languages, and which of them the page speaks. */
declare module "virtual:catalogue" {
  /** Loads a language; the usual one where it is not there. To be awaited before a module that reads words is loaded. */
  export function takeLanguage(language: string): Promise<void>;
}
