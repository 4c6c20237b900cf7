import {
  AliasNode,
  AndNode,
  BinaryOperationNode,
  ColumnNode,
  type DeleteQueryNode,
  IdentifierNode,
  type InsertQueryNode,
  type JoinNode,
  type KyselyPlugin,
  OnNode,
  type OperationNode,
  OperationNodeTransformer,
  OperatorNode,
  OrNode,
  ParensNode,
  PrimitiveValueListNode,
  type QueryId,
  ReferenceNode,
  SelectQueryNode,
  TableNode,
  type UpdateQueryNode,
  type ValueListNode,
  ValueNode,
  ValuesNode,
  WhereNode,
} from "kysely";
import { RecordsFault } from "#contract/records/fault";
import { TABLE_RULES, type TableRule } from "./tableRules.ts";

/**
 * Holds every query that goes through it to one shop: what is read, changed or deleted is the shop's own or shared by all, and what is added bears
 * the shop's id. This is the one place where shops of a database are kept apart; no query asks for the shop by itself.
 *
 * What it cannot read, it refuses: raw statements, tables without a rule, rows from a subquery, conflicts that would write over a row.
 * A raw fragment inside a query is let through; it must name no table.
 */
export function ofShop(shopId: string): KyselyPlugin {
  const narrowing = new Narrowing(shopId);
  return {
    transformQuery: ({ node, queryId }) => {
      if (!READABLE.has(node.kind)) throw new TypeError(`${node.kind} reaches every shop; it wants acrossShops()`);
      return narrowing.transformNode(node, queryId);
    },
    transformResult: async ({ result }) => result,
  };
}

const READABLE: ReadonlySet<string> = new Set(["SelectQueryNode", "InsertQueryNode", "UpdateQueryNode", "DeleteQueryNode"]);

/** A table in a query, under the name that its columns are called by there. */
interface Named {
  readonly rule: TableRule;
  readonly called: string;
}

class Narrowing extends OperationNodeTransformer {
  readonly #shopId: string;

  constructor(shopId: string) {
    super();
    this.#shopId = shopId;
  }

  protected override transformSelectQuery(node: SelectQueryNode, queryId?: QueryId): SelectQueryNode {
    mustLack(node, ["with", "setOperations"]);
    const inner = super.transformSelectQuery(node, queryId);
    const tables = (node.from?.froms ?? []).flatMap((from) => named(from) ?? []);
    return withWhere(
      inner,
      tables.flatMap((table) => this.#seen(table) ?? []),
    );
  }

  protected override transformJoin(node: JoinNode, queryId?: QueryId): JoinNode {
    const inner = super.transformJoin(node, queryId);
    const table = named(node.table);
    const condition = table === null ? null : this.#seen(table);
    if (condition === null) return inner;
    if (inner.on === undefined) throw new TypeError("a join wants a condition");
    return { ...inner, on: OnNode.create(both(inner.on.on, condition)) };
  }

  protected override transformUpdateQuery(node: UpdateQueryNode, queryId?: QueryId): UpdateQueryNode {
    mustLack(node, ["with", "from", "joins"]);
    if (node.updates?.some(({ column }) => ColumnNode.is(column) && column.column.name === "shopId"))
      throw new TypeError("a row stays with its shop");
    return withWhere(super.transformUpdateQuery(node, queryId), this.#written(node.table));
  }

  protected override transformDeleteQuery(node: DeleteQueryNode, queryId?: QueryId): DeleteQueryNode {
    mustLack(node, ["with", "using", "joins"]);
    const [from, ...others] = node.from.froms;
    if (others.length > 0) throw new TypeError("a deletion is from one table");
    return withWhere(super.transformDeleteQuery(node, queryId), this.#written(from));
  }

  protected override transformInsertQuery(node: InsertQueryNode, queryId?: QueryId): InsertQueryNode {
    mustLack(node, ["with", "onConflict", "orAction", "replace"]);
    const table = node.into?.table.identifier.name ?? "";
    ruleOf(table);
    const at = node.columns?.findIndex(({ column }) => column.name === "shopId") ?? -1;
    if (node.values === undefined || !ValuesNode.is(node.values) || at < 0) throw new TypeError("rows are added with their shop's id");
    for (const row of node.values.values) {
      const shopId = idIn(row, at);
      if (shopId !== this.#shopId)
        throw new RecordsFault("refused", table, { problems: [{ path: "shopId", value: shopId, allowed: this.#shopId }] });
    }
    return super.transformInsertQuery(node, queryId);
  }

  #seen(table: Named): OperationNode | null {
    if (table.rule.belongsTo === "all shops") return null;
    const own = this.#own(table);
    if (table.rule.belongsTo === "the shop") return own;
    const isOfBall = BinaryOperationNode.create(columnOf(table, "ballId"), OperatorNode.create("is not"), ValueNode.createImmediate(null));
    return ParensNode.create(OrNode.create(own, isOfBall));
  }

  #written(node: OperationNode | undefined): OperationNode[] {
    const table = node === undefined ? null : named(node);
    if (table === null) throw new TypeError("what is written is a table");
    return table.rule.belongsTo === "all shops" ? [] : [this.#own(table)];
  }

  #own(table: Named): OperationNode {
    return BinaryOperationNode.create(columnOf(table, "shopId"), OperatorNode.create("="), ValueNode.create(this.#shopId));
  }
}

function columnOf({ called }: Named, column: string): OperationNode {
  return ReferenceNode.create(ColumnNode.create(column), TableNode.create(called));
}

/** The table behind a name in a query; null for a subquery, which has been narrowed by itself. */
function named(node: OperationNode): Named | null {
  if (TableNode.is(node)) {
    const { name } = node.table.identifier;
    return { rule: ruleOf(name), called: name };
  }
  if (!AliasNode.is(node)) throw new TypeError(`${node.kind} is no table`);
  if (SelectQueryNode.is(node.node)) return null;
  const table = named(node.node);
  if (table === null || !IdentifierNode.is(node.alias)) throw new TypeError("a table is called by a plain name");
  return { ...table, called: node.alias.name };
}

function ruleOf(name: string): TableRule {
  const rule = (TABLE_RULES as Readonly<Record<string, TableRule>>)[name];
  if (rule === undefined || rule.belongsTo === "no shop") throw new TypeError(`the table ${name} is no shop's; it wants acrossShops()`);
  return rule;
}

function mustLack<Node extends OperationNode>(node: Node, parts: readonly (keyof Node)[]): void {
  const part = parts.find((one) => node[one] !== undefined && node[one] !== false);
  if (part !== undefined) throw new TypeError(`${node.kind} with ${String(part)} cannot be held to one shop`);
}

function withWhere<Node extends { readonly where?: WhereNode }>(node: Node, conditions: readonly OperationNode[]): Node {
  const where = conditions.reduce<OperationNode | null>((all, one) => (all === null ? one : both(all, one)), node.where?.where ?? null);
  return where === null ? node : { ...node, where: WhereNode.create(where) };
}

/** In brackets, so that an "or" of the query stays its own. */
function both(one: OperationNode, other: OperationNode): OperationNode {
  return AndNode.create(ParensNode.create(one), other);
}

function idIn(row: ValueListNode | PrimitiveValueListNode, at: number): unknown {
  if (PrimitiveValueListNode.is(row)) return row.values[at];
  const value = row.values[at];
  return ValueNode.is(value) ? value.value : null;
}
