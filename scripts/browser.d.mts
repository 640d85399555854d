export function findBrowser(): Promise<string | undefined>;
export function ensureBrowser(): Promise<string | undefined>;
export const noBrowser: string;
