/** Who is asking and what they may do. */
export type { Actor, Guest, StaffActor, Subject, SystemActor } from "./actor";
export { systemActor } from "./actor";
export { guestByToken, issueLink, revokeLinks, visitor } from "./links";
export { type Action, type NotAllowed, permit, policy } from "./policy";
export { countAttempt, type Limit, type TooMany } from "./rate-limit";
export {
  type Session,
  type SignIn,
  sessionHours,
  signIn,
  signOut,
  staffBySession,
} from "./sessions";
export { changePassword, letStaffGo, takeOnStaff } from "./staff";
export { looksLikeToken, newToken } from "./tokens";
