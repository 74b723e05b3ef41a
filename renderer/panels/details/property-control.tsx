import { type ReactNode, useId } from "react";
import type { PropertyKind } from "../../../shared-model/commands/catalog/properties.ts";
import type { PropertyValue } from "../../../shared-model/commands/command-args.ts";
import { unreachable } from "../../../shared-model/lib/unreachable.ts";
import type { Room } from "../../../shared-model/model/room.ts";
import { inOrder } from "../../../shared-model/queries/in-order.ts";
import { bareUnit, lengthInField, readLength } from "../../../shared-model/units/length-words.ts";
import { documentStore } from "../../state/document-store.ts";
import { preferencesStore } from "../../state/preferences-store.ts";
import { useStore } from "../../state/use-store.ts";
import { CommitField } from "../../ui/commit-field.tsx";
import { NewRoomOptions } from "../rooms/new-room-options.tsx";
import { BreakerControl } from "./breaker-control.tsx";
import { ChoicesControl, RepeatsControl } from "./choices-control.tsx";
import type { ControlProps } from "./control-props.ts";
import { VolumeControl } from "./volume-control.tsx";
import { wording } from "./words.ts";

/** The control that suits what a field takes, with its label. */
export function PropertyControl(props: ControlProps) {
  const { property, value, onChange } = props;
  const { takes } = property;
  switch (takes.kind) {
    case "text":
    case "number":
      return <TypedControl {...props} takes={takes} />;
    case "flag":
      return (
        <ChosenControl
          {...props}
          choices={FLAG}
          shown={value === undefined ? "" : String(value)}
          take={(text) => text === "true"}
        />
      );
    case "choice":
      return <ChosenControl {...props} choices={takes.choices} shown={textOf(value)} take={(text) => text} />;
    case "choices":
      return takes.repeats ? (
        <RepeatsControl {...props} choices={takes.choices} />
      ) : (
        <ChoicesControl {...props} choices={takes.choices} />
      );
    case "volume":
      return <VolumeControl value={value} onChange={onChange} label={property.label} />;
    case "room":
      return <RoomControl {...props} />;
    case "breaker":
      return <BreakerControl {...props} />;
    default:
      return unreachable(takes);
  }
}

const FLAG = [
  { value: "true", label: wording.yes },
  { value: "false", label: wording.no },
];

const textOf = (value: unknown): string =>
  typeof value === "string" || typeof value === "number" ? String(value) : "";

type Typed = Extract<PropertyKind, { kind: "text" | "number" }>;

function TypedControl({ property, takes, value, invalid, onChange }: ControlProps & { readonly takes: Typed }) {
  const id = useId();
  const lengths = useStore(preferencesStore, (state) => state.lengths);
  const length = takes.kind === "number" && (takes.unit === "ft" || takes.unit === "in") ? takes.unit : undefined;
  const commit = (text: string): void => {
    if (text === "" && property.optional) onChange(null);
    else if (takes.kind === "text") onChange(text);
    // What is not a number goes on as text: the field's own refusal says what it takes.
    else if (length !== undefined) onChange(readLength(text, length, lengths) ?? text);
    else onChange(text !== "" && Number.isFinite(Number(text)) ? Number(text) : text);
  };
  const unit = takes.kind !== "number" ? "" : length === undefined ? takes.unit : bareUnit(length, lengths);
  const shown =
    length !== undefined && typeof value === "number" ? lengthInField(value, length, lengths) : textOf(value);
  return (
    <>
      <label htmlFor={id}>
        {property.label}
        {unit !== "" && <small> {unit}</small>}
      </label>
      <CommitField
        id={id}
        value={shown}
        invalid={invalid}
        many={takes.kind === "text" && takes.lines === "many"}
        numeric={takes.kind === "number" && length === undefined}
        onCommit={commit}
      />
    </>
  );
}

interface ChosenProps extends ControlProps {
  readonly choices: readonly { readonly value: string; readonly label: string }[];
  readonly shown: string;
  readonly take: (text: string) => PropertyValue;
  /** Further options, after the choices. */
  readonly more?: ReactNode;
}

function ChosenControl({ property, choices, shown, take, onChange, more }: ChosenProps) {
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{property.label}</label>
      <select
        id={id}
        className="field small"
        value={shown}
        onChange={({ target }) => onChange(target.value === "" ? null : take(target.value))}
      >
        {(property.optional || shown === "") && <option value="">{wording.notEntered}</option>}
        {choices.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
        {more}
      </select>
    </>
  );
}

function RoomControl(props: ControlProps) {
  const rooms = useStore(documentStore, ({ project }) => project.rooms);
  const choices = inOrder<Room>(rooms).map(({ id, name }) => ({ value: id, label: name }));
  return (
    <ChosenControl
      {...props}
      choices={choices}
      shown={textOf(props.value)}
      take={(text) => text}
      more={<NewRoomOptions />}
    />
  );
}
