import type { Server } from "node:http";

type Served = { readonly server: Server; readonly address: string };
type Wanted = { readonly folder: string; readonly port: number };

export const usualPort: number;
export function serve(wanted: Wanted): Promise<Served>;
export function serveOnFreePort(wanted: Wanted): Promise<Served>;
