import { useEffect, useState } from "react";
import type { BookRule } from "../../../shared-model/answers/rule-book.ts";
import type { Edition } from "../../../shared-model/model/project.ts";
import { askRuleBook } from "../../state/rule-book.ts";

interface Book {
  readonly edition: Edition;
  readonly rules: readonly BookRule[];
}

let last: Book | undefined;

/** The rules by an edition, once the worker has told them; at once where they were told before. */
export function useRuleBook(edition: Edition): readonly BookRule[] | undefined {
  const [book, setBook] = useState(last);
  useEffect(() => {
    let isWanted = true;
    askRuleBook(edition).then((rules) => {
      if (rules === undefined) return;
      last = { edition, rules };
      if (isWanted) setBook(last);
    });
    return () => {
      isWanted = false;
    };
  }, [edition]);
  return book?.edition === edition ? book.rules : undefined;
}
