export { checkProof, type CheckOptions, type ProofCheck, type ProofFinding } from './check-proof.js';
export { canonicalText, recordBytes } from './canonical.js';
export {
  areErasuresSignedBy,
  erasureListIn,
  erasuresFormat,
  signErasures,
  type Erased,
  type ErasureList,
  type ErasureStatement,
} from './erasure-list.js';
export { GrowingTree, treeRoot, type Frontier, type Head } from './growing-tree.js';
export { emptyRoot, hashOfHex, hexOf, leafHash, nodeHash, sameHash, type Hash } from './hash.js';
export { personReference } from './person-reference.js';
export { headFormat, proofFormat, type HeadFile, type ProofFile, type ProvenEntry } from './proof-file.js';
export { proveConsistency, proveInclusion, proveSubtree } from './prove.js';
export { proveInclusions } from './prove-many.js';
export { rangeRoot, type LeafReader } from './range-root.js';
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
