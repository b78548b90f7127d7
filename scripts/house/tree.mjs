/** @returns {any[]} the nodes directly below a node of a syntax tree */
export function children(node) {
  const below = [];
  for (const value of Object.values(node)) {
    if (Array.isArray(value)) below.push(...value.filter(isNode));
    else if (isNode(value)) below.push(value);
  }
  return below;
}

const isNode = (value) => value !== null && typeof value === 'object' && typeof value.type === 'string';
