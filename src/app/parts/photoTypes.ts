/** The photos that a file is chosen by, as the browser's own window takes them. */
export const photoTypes = ["image/jpeg", "image/png", "image/heic", "image/heif", ".heic", ".heif"];
