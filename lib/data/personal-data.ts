/**
 * Which column and which file can hold a person. The one list that the file about a person and their erasure go by; a test
 * holds it to the database and to the folder of the data, so that a new column cannot be forgotten.
 *
 * `nothing`: no person. `customer`: who buys, rides or writes. `staff`: somebody of the shop. `words`: typed by anybody, so either.
 */
export type Holds = "nothing" | "customer" | "staff" | "words";

/** `"a b c"`: the columns of one kind, by their names in the database. */
const columns = (given: { readonly [Kind in Holds]?: string }): Readonly<Record<string, Holds>> =>
  Object.fromEntries(
    Object.entries(given).flatMap(([kind, names]) =>
      (names ?? "").split(" ").flatMap((name) => (name === "" ? [] : [[name, kind as Holds] as const])),
    ),
  );

export const personalColumns: Readonly<Record<string, Readonly<Record<string, Holds>>>> = {
  artwork_images: columns({ nothing: "artwork_id size content_type stored_as", customer: "bytes" }),
  artworks: columns({
    nothing: "id sheet_id sha256 source_type width_px height_px uploaded_at rights_at",
    customer: "file_name rights",
  }),
  bench_records: columns({
    nothing: "id pair_id serial pair_serial side release_hash strips measured version measured_at origin",
    customer: "spec",
    staff: "measured_by_name",
  }),
  catalogue_releases: columns({ nothing: "hash engine_version catalogue stored_at" }),
  caution_yeses: columns({ nothing: "id season texts_hash said_at", staff: "staff_id" }),
  clubs: columns({
    nothing: "id number customer_id palette wanted_on created_at",
    customer: "name",
    staff: "created_by_name",
  }),
  contact_codes: columns({
    nothing: "id order_id code_hash sent_at expires_at misses used_at",
    customer: "sent_to",
  }),
  correction_books: columns({
    nothing: "number version effective_at corrections summary approved_at",
    staff: "approved_by_name",
  }),
  counters: columns({ nothing: "name value" }),
  customers: columns({
    nothing: "id given_by created_at erased_at merged_into_id",
    customer: "name email phone phone_normalised address",
  }),
  devices: columns({
    nothing: "id token_hash name created_at last_seen_at floor_name enrolled_at",
    staff: "enrolled_by_name",
  }),
  door_budgets: columns({ nothing: "key points expire" }),
  events: columns({
    nothing: "seq at kind subject_kind subject_id actor_kind actor_id",
    staff: "actor_name",
    words: "data",
  }),
  first_owner_codes: columns({ nothing: "code_hash made_at" }),
  floor_books: columns({
    nothing: "number version effective_at book summary approved_at",
    staff: "approved_by_name",
    words: "reason",
  }),
  floor_changes: columns({
    nothing: "id kind from_at to_at incident_id source cost_cents made_at withdrawn_at",
    staff: "made_by_name withdrawn_by_name",
    words: "data reason withdraw_reason",
  }),
  incidents: columns({
    nothing: "id number kind state version chosen cost_cents reported_at decided_at closed_at",
    customer: "effect options base",
    staff: "reported_by_name decided_by_name closed_by_name",
    words: "input note chosen_reason",
  }),
  known_devices: columns({ nothing: "device_id since", staff: "staff_id" }),
  letters: columns({
    nothing: "id kind is_secret subject_kind subject_id state tries created_at sent_at",
    customer: "recipient heading body",
    words: "problem",
  }),
  lots: columns({ nothing: "id material number quantity unit location received_at expires_at" }),
  notices: columns({
    nothing: "id order_id incident_id kind state version drafted_at decided_at",
    customer: "body data",
    staff: "drafted_by_name decided_by_name",
    words: "decided_reason",
  }),
  operations: columns({
    nothing:
      "id pair_id station position visit state version started_at finished_at next_from press side minutes_share",
    staff: "started_by_name finished_by_name",
  }),
  orders: columns({
    nothing:
      "id number quote_id customer_id club_id state version price_book total_cents deposit_cents deposit_paid_at promise_class estimate promised_on soft_hold_until slot_lost_at slot_lost_reason rush_cents clock_started_at accepted_at accepted_how cancelled_at fee_cents refund_cents delivered_at confirmed_at confirmed_how",
    customer: "buyer_name buyer_email buyer_phone buyer_address accepted_by_name visitor_mark customer_specified price",
    words: "hard_date_plan_b cancel_reason confirmed_by_name",
  }),
  outbox: columns({ nothing: "id kind subject_kind subject_id created_at sent_at", customer: "recipient data" }),
  pair_holds: columns({
    nothing: "id pair_id reason station expected_on incident_id made_at cleared_at",
    staff: "made_by_name cleared_by_name",
    words: "note",
  }),
  pair_revisions: columns({
    nothing: "pair_id revision spec_hash created_at",
    customer: "spec price",
    words: "reason created_by_name",
  }),
  pairs: columns({
    nothing:
      "id order_id quote_id serial_number serial state version revision spec_hash release_hash mould proof_state spec_locked_at rights_at rights_needed proof_needed proof_at queued_at place_minute press_slot_at press_slot_press created_at",
    customer: "spec skier_name rights",
  }),
  payment_messages: columns({ nothing: "id payment_id received_at" }),
  payments: columns({
    nothing: "id order_id kind state cents method requested_at received_at",
    words: "reference taken_by_name",
  }),
  plan_moves: columns({
    nothing: "id pair_id from_place to_place decision_id at undone_at",
    staff: "by_name undone_by_name",
    words: "reason",
  }),
  private_links: columns({
    nothing: "id token_hash subject_kind subject_id created_at expires_at revoked_at wall_name",
  }),
  proofs: columns({
    nothing: "id pair_id revision spec_hash state issued_at answered_at",
    staff: "issued_by_name",
    words: "note answered_by_name",
  }),
  quotes: columns({
    nothing:
      "id number revision state version sheet_id customer_id contact_by spec_hash price_book total_cents release_hash engine_version date_range valid_until created_at replaces_id honoured_until club_id",
    customer: "buyer_name buyer_email buyer_phone buyer_address answers choices typed spec price fit skier_name",
    staff: "honoured_by",
    words: "created_by_name flag_acks change_request withdraw_reason honour_reason",
  }),
  rate_counters: columns({ nothing: "window_started_at count", staff: "key" }),
  reading_decisions: columns({ nothing: "seq serial measure value choice at", staff: "by", words: "reason" }),
  retention_rules: columns({ nothing: "number rules set_at", staff: "set_by_name", words: "reason" }),
  sheets: columns({
    nothing:
      "id state channel version customer_id lease_holder_id lease_until call_back_at review_asked_at opened_at updated_at club_id",
    customer: "fields phone_normalised call_back_phone skier_name",
    staff: "lease_holder_name",
    words: "call_back_reason review_note turned_down_reason opened_by_name",
  }),
  skis: columns({ nothing: "id pair_id side serial build state location measured" }),
  staff: columns({
    nothing: "id role is_demo_password closed_at created_at",
    staff: "email name password_hash floor_code_hash",
  }),
  staff_sessions: columns({
    nothing: "id kind token_hash created_at expires_at last_seen_at idle_minutes revoked_at device_id",
    staff: "staff_id",
  }),
  strips: columns({
    nothing:
      "id species board modulus_mpa density_kg_m3 width_mm height_mm length_mm grade location measured_at state held_by_pair_id side position place",
  }),
  travellers: columns({
    nothing: "id pair_id print pair_revision spec_hash printed_at voided_at",
    staff: "printed_by_name",
    words: "void_reason",
  }),
};

/** What lies in the folder of the data, by name, and what it can hold. */
export const personalFiles: Readonly<Record<string, Holds>> = {
  database: "customer",
  "database.stamp": "nothing",
  "demo-sign-ins.json": "staff",
  "house.key": "nothing",
  letters: "customer",
  pictures: "customer",
};
