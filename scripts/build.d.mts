export const built: string;
export function ensureBuilt(): boolean;
