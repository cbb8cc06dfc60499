import type { Node } from "../diagram.js";
import { boardBox } from "./board-box.js";
import type { Box } from "./box.js";
import { continuationBox } from "./continuation-box.js";
import { deviceBox, type LeadLabel } from "./device-box.js";
import { batteryBox, combinerBox } from "./joined-box.js";
import { blockBox, changeoverBox, inverterBox } from "./port-boxes.js";

/** How a node is drawn, whatever stands beside it. */
export function boxOf(node: Node, lead?: LeadLabel): Box {
  const { inside } = node;
  if (inside?.is === "board") return boardBox(node, inside);
  if (inside?.is === "combiner") return combinerBox(node, inside);
  if (inside?.is === "battery") return batteryBox(node, inside);
  if (node.symbol === "inverter") return inverterBox(node);
  if (node.symbol === "changeover") return changeoverBox(node);
  if (node.symbol === "terminal-block") return blockBox(node);
  if (node.symbol === "continuation") return continuationBox(node);
  return deviceBox(node, lead);
}
