export function findBrowser(): Promise<string | undefined>;
/** The one that the tests run in. */
export function findTestBrowser(): Promise<string | undefined>;
export function ensureBrowser(): Promise<string | undefined>;
export const noBrowser: string;
