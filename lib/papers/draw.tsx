/** One document from its data: the only place that knows the PDF library's entry point. Blocks for 0.3–0.9 s. */
import { Document, renderToBuffer } from "@react-pdf/renderer";
import { Component, type ReactElement, type ReactNode } from "react";
import words from "#content/copy/papers.json";
import { fill } from "#engine/units";
import type { LocalDateTime, Paper } from "#papers/parts/facts";
import { registerFonts } from "#papers/parts/fonts";
import { BuildSheetPages } from "./build-sheet/page";
import { ClubQuotePages } from "./club/page";
import { OrderConfirmationPages } from "./confirmation/page";
import type { DocumentData, DocumentKind } from "./kinds";
import { KitListPages } from "./kit-list/page";
import { LabelsPages } from "./labels/page";
import { ProofPages } from "./proof/page";
import { QuotePages } from "./quote/page";

const w = words.titles;

type Drawer<K extends DocumentKind> = {
  readonly title: (data: DocumentData[K]) => string;
  readonly pages: (props: { readonly data: DocumentData[K]; readonly paper: Paper }) => ReactElement;
};

const drawers: { readonly [K in DocumentKind]: Drawer<K> } = {
  "build-sheet": { title: (d) => fill(w["build-sheet"], { subject: d.pair.number }), pages: BuildSheetPages },
  "kit-list": { title: (d) => fill(w["kit-list"], { subject: d.pair.number }), pages: KitListPages },
  quote: { title: (d) => fill(w.quote, { subject: d.number }), pages: QuotePages },
  "club-quote": { title: (d) => fill(w["club-quote"], { subject: d.number }), pages: ClubQuotePages },
  "order-confirmation": {
    title: (d) => fill(w["order-confirmation"], { subject: d.orderNumber }),
    pages: OrderConfirmationPages,
  },
  proof: { title: (d) => fill(w.proof, { subject: d.serial }), pages: ProofPages },
  labels: { title: (d) => fill(w.labels, { subject: d.pair.number }), pages: LabelsPages },
};

/** PDF bytes of one document. @throws RangeError when the data does not fit the paper, Error when the library fails */
export async function drawDocument<K extends DocumentKind>(
  kind: K,
  data: DocumentData[K],
  paper: Paper,
): Promise<Uint8Array> {
  registerFonts();
  const drawer: Drawer<K> = drawers[kind];
  const Pages = drawer.pages;
  const failures: Error[] = [];
  try {
    const buffer = await renderToBuffer(
      <Document
        title={drawer.title(data)}
        author={data.shop.name}
        creator="Pairwright"
        producer="Pairwright"
        language="en"
        creationDate={stampDate(data.stamp.printedAt)}
        modificationDate={stampDate(data.stamp.printedAt)}
      >
        <Catch failures={failures}>
          <Pages data={data} paper={paper} />
        </Catch>
      </Document>,
    );
    if (failures.length === 0) return new Uint8Array(buffer);
  } catch (error) {
    throw failures[0] ?? error;
  }
  throw failures[0];
}

/** The print's own time rather than the machine's: the same data gives the same bytes. */
function stampDate(printedAt: LocalDateTime): Date {
  return new Date(`${printedAt.slice(0, 16)}:00Z`);
}

interface CatchProps {
  readonly failures: Error[];
  readonly children: ReactNode;
}

/** The library swallows what a page throws and then stumbles over the missing page; this keeps the reason. */
class Catch extends Component<CatchProps, { readonly hasFailed: boolean }> {
  override state = { hasFailed: false };

  static getDerivedStateFromError() {
    return { hasFailed: true };
  }

  override componentDidCatch(error: Error) {
    this.props.failures.push(error);
  }

  override render() {
    return this.state.hasFailed ? null : this.props.children;
  }
}
