"use client";
/** Sends a picture as it is, tells how far it has come and that it is being looked at, and leaves the sheet alone when it fails. */
import { useEffect, useRef, useState } from "react";
import type { ArtworkView } from "#services/views";
import { Notice } from "../notice";
import { fill } from "../words";
import type { SheetWords } from "./words";

/** What pickers offer; what a file is, the shop's computer reads from its bytes. */
const accepted = [
  ...["jpeg", "png", "webp", "tiff", "avif", "heic", "heif", "svg+xml"].map((type) => `image/${type}`),
  "application/pdf",
  ".heic",
  ".heif",
].join(",");

type Progress = { readonly name: string } & (
  | { readonly at: "sending"; readonly percent: number }
  /** Every byte is there; the answer is not. */
  | { readonly at: "examining" }
);

export function UploadPicture({
  url,
  hint,
  words,
  onArrived,
}: {
  /** Takes the raw bytes by POST with ?name=, answers with the picture or `{message}`. */
  readonly url: string;
  readonly hint: string;
  readonly words: SheetWords;
  readonly onArrived: (artwork: ArtworkView) => void;
}) {
  const [progress, setProgress] = useState<Progress | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);
  const w = words.graphic;

  const failed = (pattern: string, reason: string) => {
    setProgress(null);
    setProblem(fill(pattern, { reason }));
    if (input.current) input.current.value = "";
  };
  const send = (file: File) => {
    const { name } = file;
    setProblem(null);
    setProgress({ name, at: "sending", percent: 0 });
    const request = new XMLHttpRequest();
    request.open("POST", `${url}?name=${encodeURIComponent(name)}`);
    request.upload.onprogress = ({ lengthComputable, loaded, total }) => {
      // The last bytes have left this device, and nobody has said yet that they are there.
      if (lengthComputable)
        setProgress({ name, at: "sending", percent: Math.min(99, Math.floor((loaded / total) * 100)) });
    };
    request.upload.onload = () => setProgress({ name, at: "examining" });
    request.onerror = () => failed(w.uploadFailed, w.noConnection);
    request.onload = () => {
      const answer = readAnswer(request.responseText);
      if (request.status >= 400 || !answer.artwork) {
        failed(w.uploadRefused, answer.message ?? fill(w.serverSaid, { status: request.status }));
      } else {
        setProgress(null);
        onArrived(answer.artwork);
      }
    };
    request.send(file);
  };

  return (
    <div className="grid max-w-measure gap-2">
      <label htmlFor="picture" className="font-medium">
        {w.upload}
      </label>
      <input
        ref={input}
        id="picture"
        type="file"
        accept={accepted}
        aria-describedby="picture-hint"
        disabled={progress !== null}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file) send(file);
        }}
        className="max-w-full file:mr-4 file:min-h-11 file:rounded file:border file:border-solid file:border-control file:bg-sheet file:px-4 file:text-ink"
      />
      <p id="picture-hint" className="text-sm text-pencil">
        {hint}
      </p>
      {progress ? <HowFar progress={progress} words={words} /> : null}
      {problem ? <Notice tone="iron" title={problem} live="assertive" /> : null}
    </div>
  );
}

function HowFar({ progress, words }: { readonly progress: Progress; readonly words: SheetWords }) {
  const { name } = progress;
  if (progress.at === "sending") {
    return (
      <div role="status">
        <p className="text-sm">{fill(words.graphic.uploading, { name, percent: progress.percent })}</p>
        <progress max={100} value={progress.percent} aria-label={name} className="w-full" />
      </div>
    );
  }
  return (
    <div role="status">
      <p className="text-sm">
        {fill(words.graphic.examining, { name })} <Seconds words={words} />
      </p>
      <progress aria-label={name} className="w-full" />
    </div>
  );
}

const oneSecondMs = 1000;

/** Counts for the eye alone: a reader would be told every second. */
function Seconds({ words }: { readonly words: SheetWords }) {
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => setSeconds((past) => past + 1), oneSecondMs);
    return () => clearInterval(timer);
  }, []);
  return (
    <span aria-hidden="true" className="measure text-pencil">
      {fill(words.graphic.examiningFor, { seconds })}
    </span>
  );
}

function readAnswer(text: string): { readonly artwork?: ArtworkView; readonly message?: string } {
  try {
    return JSON.parse(text) as { artwork?: ArtworkView; message?: string };
  } catch {
    return {};
  }
}
