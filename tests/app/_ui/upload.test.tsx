// @vitest-environment happy-dom
/** Sending a picture: how far it has come, that it arrived, and why not. */
import { beforeEach, expect, it, vi } from "vitest";
import { UploadPicture } from "#app/_ui/sheet/upload-picture.client.tsx";
import words from "#content/copy/sheet.json";
import { operate } from "../../support/browser";

const requests: FakeRequest[] = [];
class FakeRequest {
  readonly upload: { onprogress?: (event: object) => void; onload?: () => void } = {};
  readonly open = vi.fn();
  readonly send = vi.fn();
  status = 200;
  responseText = "";
  onload: () => void = () => {};
  onerror: () => void = () => {};
  constructor() {
    requests.push(this);
  }
}
beforeEach(() => {
  requests.length = 0;
  vi.stubGlobal("XMLHttpRequest", FakeRequest);
});

it("counts what is sent, hands on what arrived, and keeps the sheet when it did not", async () => {
  const arrived = vi.fn();
  const page = await operate(
    <UploadPicture url="/files/artwork/s-1" hint="1820 × 151 mm" words={words} onArrived={arrived} />,
  );
  const input = () => page.seen.one("#picture");
  const send = async () => {
    const file = new File(["x"], "fox & hen.png", { type: "image/png" });
    Object.defineProperty(document.querySelector("#picture"), "files", { value: [file], configurable: true });
    await page.send("#picture", new Event("change", { bubbles: true }));
    return requests.at(-1);
  };
  const first = await send();
  expect(first?.open).toHaveBeenCalledWith("POST", "/files/artwork/s-1?name=fox%20%26%20hen.png");
  expect(page.seen.one("[role=status]").text).toBe("Sending fox & hen.png: 0 %");
  expect(input().attribute("disabled")).toBe("");
  first?.upload.onprogress?.({ lengthComputable: true, loaded: 1, total: 3 });
  await page.wait(0);
  expect(page.seen.one("progress").attribute("value")).toBe("33");
  first?.upload.onprogress?.({ lengthComputable: false, loaded: 2, total: 3 });
  await page.wait(0);
  expect(page.seen.one("progress").attribute("value")).toBe("33");
  // All bytes sent are not a picture taken: 100 % is never said, and then what is waited for.
  first?.upload.onprogress?.({ lengthComputable: true, loaded: 3, total: 3 });
  await page.wait(0);
  expect(page.seen.one("progress").attribute("value")).toBe("99");
  first?.upload.onload?.();
  await page.wait(0);
  expect(page.seen.one("[role=status]").text).toContain("fox & hen.png has arrived and is being looked at.");
  expect(page.seen.one("progress").attribute("value")).toBeNull();
  if (first) first.responseText = '{"artwork":{"artworkId":"a-1"}}';
  first?.onload();
  await page.wait(0);
  expect(arrived).toHaveBeenCalledWith({ artworkId: "a-1" });
  expect(input().attribute("disabled")).toBeNull();
  expect(page.seen.all("[role=status], [role=alert]")).toEqual([]);
  const failed = async (status: number, text: string) => {
    const request = await send();
    if (request) Object.assign(request, { status, responseText: text });
    request?.onload();
    await page.wait(0);
    return page.seen.one("[role=alert]").text;
  };
  expect(await failed(422, '{"message":"Too coarse."}')).toContain(
    "The picture was not taken. Too coarse. Your sheet is unchanged",
  );
  expect(await failed(400, '{"artwork":{"artworkId":"a-2"}}')).toContain("The server answered 400.");
  expect(await failed(200, "<html>")).toContain("The server answered 200.");
  const lost = await send();
  lost?.onerror();
  await page.wait(0);
  expect(page.seen.one("[role=alert]").text).toContain("There is no connection.");
  expect(arrived).toHaveBeenCalledTimes(1);
});
