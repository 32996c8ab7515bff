// What can go wrong at a node: each operator yields edits {start, end, text} of the source. Syntax is always right;
// whether the types agree is asked of the compiler.
import { otherSides, unitFactor } from "./words.mjs";

const edit = (node, text) => ({ start: node.start, end: node.end, text });
const parent = (parents, up = 1) => parents[parents.length - up];
const isNumber = (node) => node.type === "Literal" && typeof node.value === "number";
const isString = (node) => node.type === "Literal" && typeof node.value === "string";

/** Replaces the operator between two operands. */
function between(node, source, operator) {
  const gap = source.slice(node.left.end, node.right.start);
  // The operator stands in the gap, perhaps behind a bracket or a comment.
  const at = gap.indexOf(node.operator);
  if (at < 0) return [];
  const start = node.left.end + at;
  return [{ start, end: start + node.operator.length, text: operator }];
}

const opposite = { "===": "!==", "!==": "===", "==": "!=", "!=": "==", "<": ">", ">": "<", "<=": ">=", ">=": "<=" };
const atTheEdge = { "<": "<=", "<=": "<", ">": ">=", ">=": ">" };
const otherSign = { "+": "-", "-": "+", "*": "/", "/": "*", "+=": "-=", "-=": "+=", "*=": "/=", "/=": "*=" };
const ways = { "&&": "||", "||": "&&" };

/** A value that is read here: not declared, not a key, not a name of a property. */
function isRead(node, parents) {
  const up = parent(parents);
  switch (up?.type) {
    case "MemberExpression":
      return up.object === node || up.computed;
    case "Property":
      return up.value === node && parent(parents, 2)?.type === "ObjectExpression";
    case "VariableDeclarator":
      return up.init === node;
    case "AssignmentExpression":
      return up.right === node;
    case "ArrowFunctionExpression":
      return up.body === node;
    case "AssignmentPattern":
      return up.right === node;
    case "BinaryExpression":
    case "LogicalExpression":
    case "ConditionalExpression":
    case "ReturnStatement":
    case "TemplateLiteral":
    case "ArrayExpression":
    case "SpreadElement":
    case "UnaryExpression":
    case "JSXExpressionContainer":
    case "IfStatement":
      return true;
    case "CallExpression":
    case "NewExpression":
      return up.arguments.includes(node);
    default:
      return false;
  }
}

/** `{ tip }` is read and named at once: what is exchanged is the value. */
function writtenAs(node, parents, text) {
  const up = parent(parents);
  return up?.type === "Property" && up.shorthand ? `${node.name}: ${text}` : text;
}

const isIndexOrCount = (node, parents) => {
  const up = parent(parents);
  if (up?.type === "MemberExpression") return up.computed && up.property === node;
  if (up?.type === "BinaryExpression") return node.value <= 2 || up.operator in atTheEdge;
  if (up?.type === "CallExpression") return up.arguments.includes(node);
  if (up?.type === "VariableDeclarator" || up?.type === "ConditionalExpression") return true;
  return up?.type === "Property" && up.value === node;
};

const isLeaving = (node) => {
  if (node?.type === "BlockStatement") return isLeaving(node.body.at(-1));
  return ["ReturnStatement", "ThrowStatement", "ContinueStatement", "BreakStatement"].includes(node?.type);
};

/** Whether a function's body returns a value, nested functions aside. */
function handsBack(node) {
  if (node === null || typeof node !== "object") return false;
  if (node.type === "ReturnStatement") return node.argument !== null;
  if (/Function/.test(node.type ?? "")) return false;
  return Object.values(node).some((value) => (Array.isArray(value) ? value.some(handsBack) : handsBack(value)));
}

/** Of one id there is one: whoever looks for it from the other end finds the same. */
function findsById(node, parents) {
  const call = parent(parents);
  const [finder] = call?.type === "CallExpression" && call.callee === node ? call.arguments : [];
  if (!/^find(Last)?(Index)?$/.test(node.property.name) || finder?.type !== "ArrowFunctionExpression") return false;
  const { type, operator, left, right } = finder.body;
  const isId = (one) => (one.name ?? one.property?.name) === "id";
  return type === "BinaryExpression" && operator === "===" && (isId(left) || isId(right));
}

/** Calls whose arguments may stand in any order. */
const orderless = new Set(["Math.min", "Math.max", "Math.hypot"]);

const nameOfCall = (node) => node.callee.name ?? node.callee.property?.name ?? "";
const asksPermission = (text) =>
  /\b(permit|mayDo|allowed|notAllowed|require\w*|isAllowed|mayI|may[A-Z]\w*)\b/.test(text);

/** Who is let in, in a table of policy: each word's next wider one. */
const wider = { never: '"always"' };
const widerRow = { ownerOnly: "office", office: "everyone", floor: "everyone" };

export const operators = {
  comparison({ node, source }) {
    if (node.type !== "BinaryExpression" || !(node.operator in opposite)) return [];
    return between(node, source, opposite[node.operator]);
  },

  condition({ node, source, parents }) {
    switch (node.type) {
      case "LogicalExpression":
        return node.operator in ways ? between(node, source, ways[node.operator]) : [];
      case "UnaryExpression":
        return node.operator === "!" ? [edit(node, source.slice(node.argument.start, node.argument.end))] : [];
      case "ConditionalExpression":
      case "IfStatement":
        return [edit(node.test, `!(${source.slice(node.test.start, node.test.end)})`)];
      case "Literal":
        if (typeof node.value !== "boolean" || parent(parents)?.type === "JSXAttribute") return [];
        return [edit(node, String(!node.value))];
      default:
        return [];
    }
  },

  bound({ node, source, parents }) {
    if (node.type === "BinaryExpression" && node.operator in atTheEdge)
      return between(node, source, atTheEdge[node.operator]);
    if (isNumber(node) && Number.isInteger(node.value) && isIndexOrCount(node, parents))
      return [edit(node, String(node.value + 1))];
    return [];
  },

  sign({ node, source }) {
    if ((node.type === "BinaryExpression" || node.type === "AssignmentExpression") && node.operator in otherSign)
      return between(node, source, otherSign[node.operator]);
    if (node.type === "UnaryExpression" && node.operator === "-")
      return [edit(node, source.slice(node.argument.start, node.argument.end))];
    if (node.type === "UpdateExpression") {
      const text = source.slice(node.start, node.end);
      return [edit(node, node.operator === "++" ? text.replace("++", "--") : text.replace("--", "++"))];
    }
    return [];
  },

  side({ node, source, parents }) {
    if (node.type === "MemberExpression" && !node.computed && node.property.type === "Identifier")
      return findsById(node, parents) ? [] : otherSides(node.property.name).map((name) => edit(node.property, name));
    if (node.type === "Identifier" && isRead(node, parents))
      return otherSides(node.name).map((name) => edit(node, writtenAs(node, parents, name)));
    if (isString(node) && !["ImportDeclaration", "JSXAttribute"].includes(parent(parents)?.type)) {
      const up = parent(parents);
      if (up?.type === "Property" && up.key === node) return [];
      return otherSides(node.value).map((word) => edit(node, JSON.stringify(word)));
    }
    if (node.type === "CallExpression" && nameOfCall(node) === "at" && node.arguments.length === 1) {
      const text = source.slice(node.arguments[0].start, node.arguments[0].end);
      if (text === "0") return [edit(node.arguments[0], "-1")];
      if (text === "-1") return [edit(node.arguments[0], "0")];
    }
    return [];
  },

  unit({ node, source, parents }) {
    if (isNumber(node)) {
      const up = parent(parents);
      if (up?.type === "UnaryExpression" || node.value === 0) return [];
      const slips = [60, 24, 1000, 1440, 3600, 60_000, 1_000_000];
      if (slips.includes(node.value)) return [edit(node, "1")];
      if (node.value === 100 || node.value === 10) return [edit(node, String(node.value * 10))];
      const isMeasure = !Number.isInteger(node.value) || node.value > 2;
      return isMeasure ? [edit(node, String(Number((node.value * 10).toPrecision(12))))] : [];
    }
    const name = node.type === "Identifier" ? node.name : node.type === "MemberExpression" ? node.property.name : null;
    if (typeof name !== "string" || !isRead(node, parents)) return [];
    const factor = unitFactor(name);
    if (factor === null) return [];
    const text = source.slice(node.start, node.end);
    return ["*", "/"].map((operator) => edit(node, writtenAs(node, parents, `(${text} ${operator} ${factor})`)));
  },

  return({ node, source, parents }) {
    if (node.type === "IfStatement" && node.alternate === null && isLeaving(node.consequent))
      return asksPermission(source.slice(node.test.start, node.test.end)) ? [] : [edit(node, ";")];
    if (node.type !== "BlockStatement" || node.body.length === 0) return [];
    const up = parent(parents);
    if (!["FunctionDeclaration", "FunctionExpression", "ArrowFunctionExpression"].includes(up?.type)) return [];
    // A function that hands something back would not compile.
    if (handsBack(node)) return [];
    return [{ start: node.start, end: node.start + 1, text: "{ return;" }];
  },

  permission({ node, source, parents, file }) {
    if (node.type === "IfStatement" && node.alternate === null && isLeaving(node.consequent))
      return asksPermission(source.slice(node.test.start, node.test.end)) ? [edit(node, ";")] : [];
    if (node.type === "CallExpression" && nameOfCall(node) === "permit") {
      const callee = source.slice(node.callee.start, node.callee.end);
      return [edit(node, `({ ok: true, value: undefined } as ReturnType<typeof ${callee}>)`)];
    }
    if (!/(^|\/)auth\//.test(file)) return [];
    const up = parent(parents);
    if (isString(node) && node.value in wider && up?.type === "Property" && up.value === node)
      return [edit(node, wider[node.value])];
    if (node.type === "SpreadElement" && node.argument.name in widerRow)
      return [edit(node.argument, widerRow[node.argument.name])];
    return [];
  },

  arguments({ node, source }) {
    if (node.type !== "CallExpression" && node.type !== "NewExpression") return [];
    if (orderless.has(source.slice(node.callee.start, node.callee.end))) return [];
    const edits = [];
    for (let at = 0; at + 1 < node.arguments.length; at++) {
      const [one, other] = [node.arguments[at], node.arguments[at + 1]];
      if (one.type === "SpreadElement" || other.type === "SpreadElement") continue;
      const [first, second] = [one, other].map((each) => source.slice(each.start, each.end));
      const gap = source.slice(one.end, other.start);
      if (first !== second) edits.push({ start: one.start, end: other.end, text: `${second}${gap}${first}` });
    }
    return edits;
  },

  write({ node }) {
    if (node.type !== "ExpressionStatement" || node.directive) return [];
    const { expression } = node;
    const inner = expression.type === "AwaitExpression" ? expression.argument : expression;
    return ["CallExpression", "AssignmentExpression"].includes(inner.type) ? [edit(node, ";")] : [];
  },
};
