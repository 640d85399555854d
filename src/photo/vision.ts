/** What is used of the vision library. Whoever has one passes it in: this room knows neither file nor worker. */
export type Vision = {
  readonly Mat: new (rows?: number, columns?: number, type?: number) => Matrix;
  readonly MatVector: new () => MatrixList;
  readonly Size: new (width: number, height: number) => object;
  readonly CV_8UC1: number;
  readonly MORPH_OPEN: number;
  readonly MORPH_CLOSE: number;
  readonly MORPH_ELLIPSE: number;
  readonly MORPH_RECT: number;
  readonly RETR_TREE: number;
  readonly CHAIN_APPROX_NONE: number;
  readonly DICT_ARUCO_MIP_36h12: number;
  readonly getStructuringElement: (shape: number, size: object) => Matrix;
  readonly morphologyEx: (from: Matrix, to: Matrix, operation: number, kernel: Matrix) => void;
  readonly findContours: (
    image: Matrix,
    contours: MatrixList,
    hierarchy: Matrix,
    mode: number,
    method: number,
  ) => void;
  readonly getPredefinedDictionary: (name: number) => object;
  readonly aruco_DetectorParameters: new () => DetectorParameters;
  readonly aruco_RefineParameters: new (distance: number, rate: number, allOrders: boolean) => Held;
  readonly aruco_ArucoDetector: new (dictionary: object, parameters: object, refine: object) => Detector;
};

/** What lives in the library's own memory and must be given back. */
export type Held = { delete(): void };
export type Matrix = Held & {
  readonly data: Uint8Array;
  readonly data32S: Int32Array;
  readonly data32F: Float32Array;
};
export type MatrixList = Held & { size(): number; get(index: number): Matrix };
type DetectorParameters = Held & { minMarkerPerimeterRate: number; adaptiveThreshConstant: number };
type Detector = Held & { detectMarkers(image: Matrix, corners: MatrixList, ids: Matrix): void };

/** Runs `work`, and gives back all that it has kept with `keep`, also where it fails. */
export function holding<T>(work: (keep: <H extends Held>(held: H) => H) => T): T {
  const all: Held[] = [];
  try {
    return work((held) => {
      all.push(held);
      return held;
    });
  } finally {
    for (const held of all) held.delete();
  }
}

/** A picture of one byte a pixel. */
export function greyMatrix(vision: Vision, bytes: Uint8Array, width: number): Matrix {
  const matrix = new vision.Mat(bytes.length / width, width, vision.CV_8UC1);
  matrix.data.set(bytes);
  return matrix;
}
