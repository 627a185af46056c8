/** The part of clipper-lib that geometry/region.ts uses; the package ships no types. */
declare module "clipper-lib" {
  namespace ClipperLib {
    interface IntPoint {
      X: number;
      Y: number;
    }
    interface PolyNode {
      Childs(): PolyNode[];
      Contour(): IntPoint[];
      IsHole(): boolean;
    }
  }
  const ClipperLib: {
    Clipper: new () => {
      AddPath(path: ClipperLib.IntPoint[], type: number, closed: boolean): boolean;
      Execute(kind: number, solution: ClipperLib.PolyNode, subjectFill: number, clipFill: number): boolean;
    };
    PolyTree: new () => ClipperLib.PolyNode;
    ClipType: { ctIntersection: number; ctUnion: number; ctDifference: number };
    PolyType: { ptSubject: number; ptClip: number };
    PolyFillType: { pftEvenOdd: number; pftNonZero: number };
  };
  export default ClipperLib;
}
