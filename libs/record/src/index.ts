export { canonicalText, recordBytes } from './canonical.js';
export { GrowingTree, treeRoot, type Frontier, type Head } from './growing-tree.js';
export { emptyRoot, hashOfHex, hexOf, leafHash, nodeHash, sameHash, type Hash } from './hash.js';
export { personReference } from './person-reference.js';
export { proveConsistency, proveInclusion, proveSubtree, type LeafReader } from './prove.js';
export { isHeadSignedBy, signHead, type HeadStatement, type SignedHead } from './signed-head.js';
export { Unrecordable } from './unrecordable.js';
export {
  provesConsistency,
  provesInclusion,
  provesSubtree,
  type ConsistencyClaim,
  type InclusionClaim,
  type SubtreeClaim,
} from './verify-proof.js';
export {
  verifyRecord,
  type Misfit,
  type RecordCheck,
  type RecordCheckOptions,
  type RecordEntry,
} from './verify-record.js';
