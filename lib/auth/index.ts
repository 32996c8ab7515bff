/** Who is asking and what they may do. */
export type { Actor, Guest, StaffActor, Subject, SystemActor } from "./actor";
export { systemActor } from "./actor";
export { type DeviceClaim, deviceByToken, type FloorDoor, floorDoor } from "./devices";
export { isLoopback } from "./door";
export { type FirstOwner, isShopEmpty, makeFirstOwner, offerFirstOwner } from "./first-owner";
export { endsAt, isOver, sessionHours } from "./idle";
export {
  endLinksSoon,
  guestByToken,
  issueLink,
  type LinkStanding,
  linkEnd,
  linkStanding,
  renewLinks,
  revokeLinks,
  visitor,
} from "./links";
export { type Action, type NotAllowed, permit, policy } from "./policy";
export { countAttempt, type Limit, type TooMany } from "./rate-limit";
export { guestName, nameOf, occasionOf } from "./record";
export {
  type FloorSignIn,
  type Session,
  type SignIn,
  signIn,
  signInByCode,
  signOut,
  staffBySession,
} from "./sessions";
export { changeOwnPassword, changePassword, letStaffGo, type NewStaff, setFloorCode, takeOnStaff } from "./staff";
export { looksLikeToken, newToken } from "./tokens";
export { passwordLength } from "./weak-passwords";
