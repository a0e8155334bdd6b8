/**
 * What a Linked Art 1.0 object may hold: for each class its properties, those it must have, and the class of their
 * values. Written anew, for the classes that a file uses, from the JSON schemas that the Linked Art community publishes
 * (object.json and core.json at https://linked.art/api/1.0/schema/, content of the site licensed CC BY 4.0), as stored
 * publicly with the site's source, commit 06490aaa; and, for who made an object as somebody found, from the example of
 * uncertain assignments at https://linked.art/model/assertion/, since the schema leaves a production open. The schemas
 * themselves are not kept here.
 */
export type Shape = {
  readonly type: string;
  readonly needs: readonly string[];
  readonly may: Readonly<Record<string, Value>>;
};
/** Text, number, a moment, an address, or one or several of the shapes that are named. */
export type Value =
  | "text"
  | "number"
  | "moment"
  | "address"
  | { readonly one: string }
  | { readonly many: readonly string[] };

const many = (...names: readonly string[]): Value => ({ many: names });
const one = (name: string): Value => ({ one: name });
const named = {
  type: "text",
  _label: "text",
  identified_by: many("Name"),
  classified_as: many("Type"),
} as const;
const told = { ...named, referred_to_by: many("Statement", "LinguisticObjectRef") } as const;
const reference = (type: string): Shape => ({
  type,
  needs: ["id", "type"],
  may: { id: "address", type: "text", _label: "text" },
});

export const SHAPES: Readonly<Record<string, Shape>> = {
  HumanMadeObject: {
    type: "HumanMadeObject",
    needs: ["@context", "id", "type", "_label"],
    may: {
      ...told,
      "@context": "address",
      id: "address",
      representation: many("VisualItem"),
      subject_of: many("Text"),
      dimension: many("Dimension"),
      shows: many("VisualItemRef"),
      carries: many("LinguisticObjectRef"),
      produced_by: one("Production"),
    },
  },
  Production: {
    type: "Production",
    needs: ["type"],
    may: { ...told, timespan: one("TimeSpan"), attributed_by: many("AttributeAssignment") },
  },
  AttributeAssignment: {
    type: "AttributeAssignment",
    needs: ["type"],
    may: {
      ...told,
      timespan: one("TimeSpan"),
      carried_out_by: many("PersonRef"),
      assigned: many("Group", "GroupRef"),
      assigned_property: "text",
    },
  },
  TimeSpan: {
    type: "TimeSpan",
    needs: ["type"],
    may: { ...named, begin_of_the_begin: "moment", end_of_the_end: "moment" },
  },
  Dimension: {
    type: "Dimension",
    needs: ["type", "value", "unit"],
    may: {
      ...named,
      value: "number",
      lower_value_limit: "number",
      upper_value_limit: "number",
      unit: one("MeasurementUnitRef"),
    },
  },
  Name: { type: "Name", needs: ["type", "content"], may: { ...named, content: "text" } },
  Type: { type: "Type", needs: ["id", "type"], may: { ...named, id: "address" } },
  Statement: {
    type: "LinguisticObject",
    needs: ["type", "content"],
    may: { ...named, content: "text", format: "text" },
  },
  Text: {
    type: "LinguisticObject",
    needs: ["type"],
    may: { ...told, digitally_carried_by: many("DigitalObject") },
  },
  VisualItem: {
    type: "VisualItem",
    needs: ["type"],
    may: { ...told, digitally_shown_by: many("DigitalObject") },
  },
  DigitalObject: {
    type: "DigitalObject",
    needs: ["type"],
    may: { ...told, access_point: many("DigitalObjectRef"), format: "text" },
  },
  Group: { type: "Group", needs: ["type"], may: named },
  GroupRef: reference("Group"),
  PersonRef: reference("Person"),
  VisualItemRef: reference("VisualItem"),
  LinguisticObjectRef: reference("LinguisticObject"),
  DigitalObjectRef: reference("DigitalObject"),
  MeasurementUnitRef: reference("MeasurementUnit"),
};
