import { useEffect, useRef, useState } from "react";
import { useWords } from "../../words.ts";

/** W3C Shape Detection API; some browsers have none, and there a mark is typed. */
interface Detector {
  detect(source: HTMLVideoElement): Promise<readonly { readonly rawValue: string }[]>;
}
declare global {
  interface Window {
    BarcodeDetector?: new (options: { formats: string[] }) => Detector;
  }
}

export function canScan(): boolean {
  return window.BarcodeDetector !== undefined && navigator.mediaDevices !== undefined;
}

/** Between two looks at the camera's picture, milliseconds. */
const APART = 200;

export function Scanner({ onCode, onLeave }: { onCode: (code: string) => void; onLeave: () => void }) {
  const { w } = useWords();
  const video = useRef<HTMLVideoElement>(null);
  const hear = useRef(onCode);
  useEffect(() => {
    hear.current = onCode;
  }, [onCode]);
  const [isBlind, setBlind] = useState(false);
  useEffect(() => {
    let isLeft = false;
    let stream: MediaStream | undefined;
    const watch = async (): Promise<void> => {
      try {
        stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
        const screen = video.current;
        const detector = window.BarcodeDetector && new window.BarcodeDetector({ formats: ["qr_code"] });
        if (isLeft || !screen || !detector) return stop();
        screen.srcObject = stream;
        await screen.play();
        while (!isLeft) {
          const [code] = await detector.detect(screen);
          if (code && !isLeft) return hear.current(code.rawValue);
          await new Promise((resolve) => setTimeout(resolve, APART));
        }
      } catch {
        if (!isLeft) setBlind(true);
      }
    };
    const stop = (): void => {
      for (const track of stream?.getTracks() ?? []) track.stop();
    };
    void watch();
    return () => {
      isLeft = true;
      stop();
    };
  }, []);
  return (
    <div className="scanner">
      {isBlind ? (
        <p className="warn" role="alert">
          {w("page.site.no-camera")}
        </p>
      ) : (
        <video ref={video} muted playsInline aria-label={w("page.site.camera")} />
      )}
      <button type="button" onClick={onLeave}>
        {w("page.site.type-instead")}
      </button>
    </div>
  );
}
