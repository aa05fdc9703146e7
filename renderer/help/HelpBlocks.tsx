import { Fragment } from "react";
import type { HelpBlock } from "../../core/base/words/help/page.ts";
import { isKeyId } from "../../core/edit/keys/rows.ts";
import { useKeyOf } from "../keys/useKeyOf.ts";

/** Paragraphs, lists and words of a page. Where text and index are all there is, the index is the key. */
export function HelpBlocks({ blocks }: { readonly blocks: readonly HelpBlock[] }) {
  return blocks.map((block, index) => <Block key={index} block={block} />);
}

function Block({ block }: { readonly block: HelpBlock }) {
  if (typeof block === "string")
    return (
      <p>
        <Said text={block} />
      </p>
    );
  if ("terms" in block)
    return (
      <dl className="help-terms">
        {block.terms.map(([term, meaning]) => (
          <div key={term}>
            <dt>{term}</dt>
            <dd>
              <Said text={meaning} />
            </dd>
          </div>
        ))}
      </dl>
    );
  return (
    <ul>
      {block.map((item) => (
        <li key={item}>
          <Said text={item} />
        </li>
      ))}
    </ul>
  );
}

/** A sentence with its keys as they are on this keyboard, and as the person set them. */
function Said({ text }: { readonly text: string }) {
  const keyOf = useKeyOf();
  return text.split(/\{([\w-]+)\}/).map((piece, index) =>
    index % 2 === 1 && isKeyId(piece) ? (
      <kbd key={index} className="key-cap">
        {keyOf(piece)}
      </kbd>
    ) : (
      <Fragment key={index}>{piece}</Fragment>
    ),
  );
}
