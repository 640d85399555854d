/** The two large libraries of compiled code, each fetched when it is first needed. */
import visionAddress from "@techstark/opencv-js/dist/opencv.js?url";
import type { Vision } from "../../../photo/index.ts";

let vision: Promise<Vision> | null = null;

export function loadVision(): Promise<Vision> {
  vision ??= startVision();
  return vision;
}

/**
 * As its makers ship it: bundled and made small it no longer runs. It leaves a promise of itself among the global
 * names.
 */
async function startVision(): Promise<Vision> {
  await import(/* @vite-ignore */ new URL(visionAddress, location.href).href);
  return Object.getOwnPropertyDescriptor(globalThis, "cv")?.value;
}

/** What is used of the library that reads HEIC. */
type Heif = { readonly HeifDecoder: new () => { decode(bytes: Uint8Array): readonly HeifImage[] } };
type HeifImage = {
  get_width(): number;
  get_height(): number;
  free(): void;
  display(into: HeifPixels, done: (shown: HeifPixels | null) => void): void;
};
type HeifPixels = { readonly data: Uint8ClampedArray; readonly width: number; readonly height: number };

export async function loadHeif(): Promise<Heif> {
  const { default: open } = await import("libheif-js/libheif-wasm/libheif-bundle.mjs");
  return open();
}
