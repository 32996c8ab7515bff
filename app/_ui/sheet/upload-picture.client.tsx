"use client";
/** Sends a picture as it is, tells how far it has come, and leaves the sheet alone when it fails. */
import { useRef, useState } from "react";
import type { ArtworkView } from "#services/views";
import { Notice } from "../notice";
import { fill } from "../words";
import type { SheetWords } from "./words";

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
  const [progress, setProgress] = useState<{ readonly name: string; readonly percent: number } | null>(null);
  const [problem, setProblem] = useState<string | null>(null);
  const input = useRef<HTMLInputElement>(null);

  const failed = (reason: string) => {
    setProgress(null);
    setProblem(fill(words.graphic.uploadFailed, { reason }));
    if (input.current) input.current.value = "";
  };
  const send = (file: File) => {
    setProblem(null);
    setProgress({ name: file.name, percent: 0 });
    const request = new XMLHttpRequest();
    request.open("POST", `${url}?name=${encodeURIComponent(file.name)}`);
    request.upload.onprogress = (event) => {
      if (event.lengthComputable)
        setProgress({ name: file.name, percent: Math.round((event.loaded / event.total) * 100) });
    };
    request.onerror = () => failed("There is no connection.");
    request.onload = () => {
      const answer = readAnswer(request.responseText);
      if (request.status >= 400 || !answer.artwork) failed(answer.message ?? `The server answered ${request.status}.`);
      else {
        setProgress(null);
        onArrived(answer.artwork);
      }
    };
    request.send(file);
  };

  return (
    <div className="grid max-w-measure gap-2">
      <label htmlFor="picture" className="font-medium">
        {words.graphic.upload}
      </label>
      <input
        ref={input}
        id="picture"
        type="file"
        accept="image/jpeg,image/png,image/webp,image/tiff"
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
      {progress ? (
        <div role="status">
          <p className="text-sm">{fill(words.graphic.uploading, { name: progress.name, percent: progress.percent })}</p>
          <progress max={100} value={progress.percent} aria-label={progress.name} className="w-full" />
        </div>
      ) : null}
      {problem ? <Notice tone="iron" title={problem} live="assertive" /> : null}
    </div>
  );
}

function readAnswer(text: string): { readonly artwork?: ArtworkView; readonly message?: string } {
  try {
    return JSON.parse(text) as { artwork?: ArtworkView; message?: string };
  } catch {
    return {};
  }
}
