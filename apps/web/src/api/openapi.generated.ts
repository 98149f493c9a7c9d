// Made from the OpenAPI document of the server by `npm run api-types`; do not edit.
export interface paths {
  '/api/aircraft': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Every aircraft as it was entered, and what the MEL of each type asks of one. */
    get: operations['EnteringController_list'];
    put?: never;
    /** Enter an aircraft of the fleet. */
    post: operations['EnteringController_enter'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** One aircraft: open items, what is left on it, its next flights. */
    get: operations['FleetController_aircraft'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/answer': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** May it fly this flight, with what is open and recorded, and why. */
    get: operations['FleetController_answer'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/engines': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The counters of each engine, and every statement they come from, with history. */
    get: operations['EnginesController_view'];
    put?: never;
    /** State, signed, what the counters of an engine read, or what it used that no leg tells. */
    post: operations['EnginesController_enter'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/engines/{count}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    /** Correct it, signed: another version is added, and what stood before stays readable. */
    put: operations['EnginesController_correct'];
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/engines/{count}/withdrawn': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that it was never so: it counts no more and stays readable. */
    post: operations['EnginesController_withdraw'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/engines/statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The statement that a signature would certify. */
    get: operations['EnginesController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/entries': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Find entries by number, words, chapter or fault message. */
    get: operations['MelController_search'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/entries/{number}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** One entry as it reads for this aircraft. */
    get: operations['MelController_entry'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/facts': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    /** Answer a question about the aircraft or a flight. */
    put: operations['DispatchController_answer'];
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/fit': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    /** Change serial, configuration and base of an aircraft, such as after a modification. */
    put: operations['EnteringController_change'];
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/flights': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Every flight planned for an aircraft from now on. */
    get: operations['EnteringController_planned'];
    put?: never;
    /** Plan a flight for an aircraft. */
    post: operations['EnteringController_plan'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/flights/{flight}/acceptance': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What the commander is shown for this flight, and what was accepted or declined. */
    get: operations['AcceptancesController_view'];
    put?: never;
    /** Accept the aircraft for this flight with what is open, or decline it with a reason. */
    post: operations['AcceptancesController_accept'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/flights/{flight}/acceptance/statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The statement that an acceptance would certify. */
    get: operations['AcceptancesController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/flights/{flight}/cancellation': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Cancel a planned flight. */
    post: operations['EnteringController_cancel'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/history.json': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The whole history of an aircraft, entry by entry, with the proofs. */
    get: operations['HistoriesController_ofAircraft'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/history.pdf': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The whole history of an aircraft as PDF, every signature with name, licence, role and time. */
    get: operations['DocumentsController_ofAircraft'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/judgement-statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The statement that a judgement would certify. */
    get: operations['DispatchController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/judgements': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Give a named person's judgement, signed. */
    post: operations['DispatchController_judge'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Everything left on the aircraft, what it belongs to, and what was undone last. */
    get: operations['RegisterController_view'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/as-written': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that a correction which waits is not made: as another person who looked, or as the one who asked and takes it back. */
    post: operations['RegisterController_stay'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/corrections': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that a place or number is mistyped. It stands until a second person has looked. */
    post: operations['RegisterController_correct'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/ended-documents': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that a document is no longer in force: what is under it has no owner. */
    post: operations['RegisterController_end'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/fitted': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that things are left altered under a modification, a directive or a permit. */
    post: operations['RegisterController_fit'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/found': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Say that a thing was found on the aircraft that nobody owns. It may not fly with it. */
    post: operations['RegisterController_find'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/hand-overs': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Hand the aircraft over to the next shift: the list, signed by who gives. */
    post: operations['RegisterController_give'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/hand-overs-taken': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Take over a hand-over: the same list, signed by who takes. */
    post: operations['RegisterController_take'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/moves': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that things belong to another owner from now on, or to another one as well. */
    post: operations['RegisterController_move'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/removed': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that things which no open item owns are undone. */
    post: operations['RegisterController_remove'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/second-looks': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign, as another person who looked at the aircraft, that a correction is right. */
    post: operations['RegisterController_look'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/seen': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign, as another person, that things are seen to be undone. */
    post: operations['RegisterController_see'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/left/statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The statement that a signature would certify. Show it; send it back word for word. */
    get: operations['RegisterController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/legs': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What the aircraft flew, with earlier versions, and delays beside its defects. */
    get: operations['LegsController_list'];
    put?: never;
    /** Enter a leg by hand. */
    post: operations['LegsController_enter'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/legs/{leg}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    /** Correct a leg: another version is added, and what stood before stays readable. */
    put: operations['LegsController_correct'];
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/losses': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What of the record of this aircraft was lost and made anew, as it was stated. */
    get: operations['LossesController_list'];
    put?: never;
    /** State, signed, that part of the record was lost and made anew, and which authority was told. */
    post: operations['LossesController_state'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/losses/statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What is certified when a loss is stated. */
    get: operations['LossesController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/next-flights': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The flights planned for it, one after another: which breaks first, and what would save it. */
    get: operations['DispatchController_nextFlights'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/questions': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Which question to ask next, so that the answer is settled soonest. */
    get: operations['FleetController_questions'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/retirement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** An aircraft leaves the fleet; its history stays. */
    post: operations['EnteringController_retire'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/return': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** An aircraft that left the fleet comes back. */
    post: operations['EnteringController_bringBack'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/aircraft/{id}/what-helps': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Where the answer is no or not settled: other rows, the least to fix, why rows are refused. */
    get: operations['FleetController_whatHelps'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/calendar-feeds': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Your calendar feeds; for an administrator those of everybody. */
    get: operations['FeedsController_list'];
    put?: never;
    /** Make a feed. Its address is told with this answer and kept nowhere. */
    post: operations['FeedsController_make'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/calendar-feeds/{id}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    post?: never;
    /** Revoke a feed: its address answers nothing from then on. */
    delete: operations['FeedsController_revoke'];
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/calendar/{token}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The deadlines as iCalendar (RFC 5545), one event for each deferral with a fixed end. */
    get: operations['CalendarController_read'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/card-confirmations': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Confirm a card against the newest revision of its manual, signed. */
    post: operations['CardLibraryController_confirm'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/card-confirmations/statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The statement that the confirmation of a card would certify. */
    get: operations['CardLibraryController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/cards': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Every work card in force, what it was written from, and whether its manual went on. */
    get: operations['CardLibraryController_list'];
    put?: never;
    /** Load a library of work cards. A bad file loads nothing and every error is named. */
    post: operations['CardLibraryController_load'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/cards/schema': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** JSON Schema 2020-12 of a library of work cards. */
    get: operations['CardLibraryController_schema'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Open defects of the fleet, those that end first at the top. */
    get: operations['DefectsController_list'];
    put?: never;
    /** Write up a defect. Until it is answered the aircraft may not fly. */
    post: operations['DefectsController_writeUp'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects.csv': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Open items as CSV. A text that a spreadsheet would carry out as a formula has an apostrophe before it. */
    get: operations['OpenItemsController_list'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** One defect with its history. */
    get: operations['DefectsController_one'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/as-written': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that a correction which waits is not made: as the second person who looked, or as the one who asked and takes it back. */
    post: operations['CorrectingController_stay'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/authority-document': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Enter what an authority allows beyond the deadline. It carries the flights it covers and no others. */
    post: operations['ExtendingController_enter'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/card-inspections': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign an independent inspection on a card, by another person than whoever did the steps. */
    post: operations['CardsController_inspect'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/card-seconds': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** What the browser is asked for, so that the second person of a step signs with a passkey of their own. */
    post: operations['CardsController_askSecond'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/card-signatures': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign a card: every step done, everything accounted for. */
    post: operations['CardsController_sign'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/card-steps': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Do, begin or end a step of a card. It needs no secret, and an authorisation that covers it. */
    post: operations['CardsController_step'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/card-stops': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Stop a card with nothing of it left on the aircraft. */
    post: operations['CardsController_stop'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/cards': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Work cards that were started for the defect, and those that may be. */
    get: operations['CardsController_list'];
    put?: never;
    /** Start a work card. Until it is signed or stopped the aircraft may not fly. */
    post: operations['CardsController_start'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/cards/{work}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The work on one card: its steps, what is counted out, what is missing. ETag of the defect. */
    get: operations['CardsController_one'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/concurrence': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Concur to a deferral, or to a change of its row, before it is signed. */
    post: operations['ConcurrenceController_concur'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/correction': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that something was mistyped, and what it should read. The original stays readable; what decides something waits for a second person. */
    post: operations['CorrectingController_correct'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/crew-placard': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Enter a temporary placard that the crew fitted. */
    post: operations['CrewPlacardController_fit'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/deferral': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Defer on an MEL row or another basis. The clock runs from the day in the log. */
    post: operations['ActsController_defer'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/extension': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What an extension granted now would give, or why the operator may not extend. */
    get: operations['ExtendingController_offer'];
    put?: never;
    /** Grant the extension that waits: another person, signed, before the interval ends. */
    post: operations['ExtendingController_grant'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/extension-request': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Ask for an extension. A request that waits is replaced by this one. */
    post: operations['ExtendingController_ask'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/extension-request/closed': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Withdraw your own request, or decline that of somebody else. */
    post: operations['ExtendingController_close'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/history.json': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The whole history of a defect, entry by entry, with the proofs. */
    get: operations['HistoriesController_ofDefect'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/history.pdf': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The whole history of a defect as PDF, every signature with name, licence, role and time. */
    get: operations['DocumentsController_ofDefect'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/identification': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Name the failed item: MEL entry and unit. */
    post: operations['ActsController_identify'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/inspection': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign an independent inspection, by another person than the one who did the work. */
    post: operations['ActsController_inspect'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/joining': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Answer the write-up: another entry of an item that is open under deferral already. */
    post: operations['ActsController_join'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/left': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that things are left altered on the aircraft for this defect. */
    post: operations['ActsController_leave'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/no-fault-found': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Answer the write-up: checked, no fault found. */
    post: operations['ActsController_findNoFault'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/placard': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that the placard is fitted. */
    post: operations['ActsController_fitPlacard'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/placards.pdf': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The placards of a deferral to be stuck on, each with a code that opens it. */
    get: operations['PlacardsController_labels'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/procedures': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign an (M) or (O) procedure and what it leaves altered on the aircraft. */
    post: operations['ActsController_signProcedure'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/raised-in-error': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Answer the write-up: it was raised in error. */
    post: operations['ActsController_raiseInError'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/rectification': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign the work done on the defect. */
    post: operations['ActsController_rectify'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/recurrence': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** This write-up beside those before it that are like it, and whether that is repetitive. */
    get: operations['RecurrenceController_view'];
    put?: never;
    /** Decide, as maintenance control, whether it is a repetitive defect. */
    post: operations['RecurrenceController_decide'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/recurrence/statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The statement that the decision would certify. */
    get: operations['RecurrenceController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/release': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Release to service; closes the defect. */
    post: operations['ActsController_release'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/restoration': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that the normal configuration is restored and nothing is left on the aircraft. */
    post: operations['ActsController_restore'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/row': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Change the row that a deferral stands on. It is work to be signed; the clock is kept. */
    post: operations['ActsController_changeRow'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/second-look': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign as the second person that a correction is right. Then it reads otherwise. */
    post: operations['CorrectingController_look'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The statement that a signature would certify. Show it; send it back word for word. */
    get: operations['DefectsController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/swap': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that the failed part was swapped to another position. The clock runs on. */
    post: operations['ActsController_swapUnit'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/test': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign a test after the work. */
    post: operations['ActsController_test'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/undone': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign that things left on the aircraft are undone. */
    post: operations['ActsController_undo'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/defects/{id}/verification': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign the general verification: tools accounted for, panels closed, register checked. */
    post: operations['ActsController_verify'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/dispatch/questions': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** May it fly, if these rows were recorded and these changes made? Nothing is stored. */
    post: operations['DispatchController_ask'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/events': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** That something was done, as it is sealed in the record. */
    get: operations['LiveController_follow'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/extensions': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Every extension of the operator, the newest first, with where its notice stands. */
    get: operations['ExtensionsController_register'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/extensions/{id}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** One extension. */
    get: operations['ExtensionsController_one'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/extensions/{id}/notice': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The notice to the authority as a document to print. */
    get: operations['ExtensionsController_document'];
    put?: never;
    /** Note that the notice was sent, or acknowledged, with its reference. */
    post: operations['ExtensionsController_note'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/facts': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Every fact that can be asked for: its type, its choices, who may answer. */
    get: operations['DispatchController_list'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/fleet': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Every aircraft: what is open, the next deadline, the answer for its next flight. */
    get: operations['FleetController_fleet'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/fleet/swap': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Could the aircraft exchange rotations so that all flights may be flown? Nothing is stored. */
    post: operations['SwapController_swap'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/flight-plans': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Plan a whole list of flights, or none of it. */
    post: operations['FlightPlansController_plan'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/health': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Whether the server and its database answer. */
    get: operations['ProblemsController_health'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/invitations': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Invitations that were neither taken up nor withdrawn, with why one lets nobody in. */
    get: operations['InvitationsController_list'];
    put?: never;
    /** Invite somebody who has an account here already. The code is told once; it names nobody. */
    post: operations['InvitationsController_invite'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/invitations/{id}/withdrawal': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Withdraw an invitation that nobody has taken up. */
    post: operations['InvitationsController_withdraw'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/manual-revisions': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Record that a manual was revised. Cards written from an older revision need confirming. */
    post: operations['CardLibraryController_recordRevision'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/mel': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The revisions that were loaded. */
    get: operations['MelController_revisions'];
    put?: never;
    /** Load a revision. A bad file loads nothing and every error is named. */
    post: operations['MelController_load'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/mel/schema': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** JSON Schema 2020-12 of the MEL content format. */
    get: operations['MelController_schema'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/movements': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Take movement messages in, one or many, and tell what they changed. */
    post: operations['MovementsController_receive'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/movements/tray': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What could not be read or settled and waits for a person, the oldest first. */
    get: operations['MovementsController_list'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/movements/tray/{id}/mended': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Send a corrected text, or say that it stays as it is. What came in stays readable. */
    post: operations['MovementsController_mend'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/opening': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What a new operator needs before its first aircraft can be judged, step by step. */
    get: operations['OpeningController_steps'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/opening/anybody': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Whether anybody can sign in here at all, for the page of a fresh server. */
    get: operations['OpeningController_anybody'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/organisations': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Enter an organisation and the number of its approval. */
    post: operations['EnteringController_organisation'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/passkeys': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Your passkeys, and what is certified when one is added. */
    get: operations['PasskeysController_list'];
    put?: never;
    /** Add the passkey that the browser made. */
    post: operations['PasskeysController_register'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/passkeys/{id}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    post?: never;
    /** Remove one of your passkeys. What it signed stays signed. */
    delete: operations['PasskeysController_remove'];
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/passkeys/challenge': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Prove yourself, to add a passkey: answers what the browser is asked for. */
    post: operations['PasskeysController_toRegister'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/passkeys/signature': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** What the browser is asked for, to sign this statement with a passkey. */
    post: operations['PasskeysController_toSign'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Who works for the operator, and what each may sign. */
    get: operations['MembersController_list'];
    put?: never;
    /** Make an account. Its first secret is told once, and serves to choose an own one. */
    post: operations['AccountsController_create'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/authorisation-statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What is certified when a standing authorisation is granted. */
    get: operations['AccountsController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/authorisations': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Grant somebody else a standing authorisation with its scope and validity, signed. */
    post: operations['AccountsController_grant'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/authorisations/{authorisation}/revocation': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Revoke an authorisation from this moment on. */
    post: operations['AccountsController_revoke'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/erasure': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Erase the personal data of somebody who left, signed; the record and its proofs stay. */
    post: operations['MembersController_erase'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/erasure-statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What is certified when the personal data of somebody who left are erased. */
    get: operations['MembersController_erasureStatement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/first-secret': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Another first secret, while the person has chosen no own one. */
    post: operations['AccountsController_anotherFirst'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/leaving': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Somebody leaves now: access ends at once, what was signed stays good. */
    post: operations['MembersController_leaves'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/lock': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Lock the access of somebody else: every session ends, nothing that was signed is touched. */
    post: operations['AccountsController_lock'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/one-off': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Authorise somebody for one signature on one defect, signed. */
    post: operations['MembersController_issue'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/one-off-statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What is certified when a one-off authorisation is issued. */
    get: operations['MembersController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/roles': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    /** Change the roles of somebody else. */
    put: operations['AccountsController_roles'];
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/unlock': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Unlock it, and free a name that wrong secrets have locked. */
    post: operations['AccountsController_unlock'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/people/{id}/written-names': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Where the name of somebody stands in what people wrote, which no erasure takes away. */
    get: operations['MembersController_writtenNames'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/problems': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** All types of problem. */
    get: operations['ProblemsController_all'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/problems/{code}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** One type of problem. */
    get: operations['ProblemsController_one'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/record': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The record of one aircraft, in the order it was written. */
    get: operations['RecordController_entries'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/record/head': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The newest head of the tree over the record. */
    get: operations['RecordController_head'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/record/heads': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** The heads that were signed and exported, the newest first, at most 200. */
    get: operations['RecordController_heads'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/record/holds': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Keep something beyond its period until it is released. */
    post: operations['HoldsController_place'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/record/holds/{id}/release': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Release what was kept beyond its period. */
    post: operations['HoldsController_release'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/record/proof': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Proof that an entry stands in the record, and of how the record grew. */
    get: operations['RecordController_proof'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/record/retention': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What is past its period of keeping, at most 500 defects. It deletes nothing. */
    get: operations['RecordController_pastKeeping'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/record/state': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** How long the record is, and how old the last backup and the last signed head are. */
    get: operations['RecordController_state'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/record/verification': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Read the whole record through and compare all of it, as `proviso record verify` does. */
    get: operations['RecordController_verification'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/reminder-addresses': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Enter a mailbox or an endpoint. The secret of an endpoint is told with this answer alone. */
    post: operations['RemindersController_add'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/reminder-addresses/{id}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    post?: never;
    /** Turn an address off: nothing is sent there from then on. */
    delete: operations['RemindersController_end'];
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/reminder-addresses/{id}/code': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Send another code to a mailbox that is not confirmed. */
    post: operations['RemindersController_askCode'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/reminder-addresses/{id}/confirmation': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Tell the code that was sent to a mailbox: reminders go there from then on. */
    post: operations['RemindersController_confirm'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/reminder-addresses/{id}/secret': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** A new secret for an endpoint; the one before signs beside it for a day. */
    post: operations['RemindersController_renew'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/reminders': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Where reminders go, what was sent, and what could not be delivered: to you and to the operator. */
    get: operations['RemindersController_list'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/repeats': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Repeated work of all open items: what is owed next, and what was missed. */
    get: operations['RepeatsController_list'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/session': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Who is signed in, and for which operator. */
    get: operations['PeopleController_session'];
    put?: never;
    /** Sign in; the session travels in a cookie. */
    post: operations['PeopleController_signIn'];
    /** Sign out. */
    delete: operations['PeopleController_signOut'];
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/session/failed-attempts': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    post?: never;
    /** Say that you saw how often somebody tried your name in vain; it is counted anew. */
    delete: operations['PeopleController_seen'];
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/session/invitation': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** What the code of an invitation is for, and the words to sign. Nothing is stored. */
    post: operations['InvitationsController_look'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/session/memberships': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Take up an invitation, signed: from then on you work for that operator, too. */
    post: operations['InvitationsController_takeUp'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/session/operator': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    /** Choose the operator to work for; one at a time. */
    put: operations['PeopleController_choose'];
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/session/passkey': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Sign in with a passkey; the session travels in a cookie. */
    post: operations['PeopleController_signInByPasskey'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/session/passkey-challenge': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** What the browser is asked for, to sign in with a passkey. */
    post: operations['PeopleController_passkeyChallenge'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/session/secret': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    /** Change your secret; every other session of yours ends. */
    put: operations['PeopleController_changeSecret'];
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/settings': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What the operator settled: each value with its source, and its own with the reason. */
    get: operations['SettingsController_view'];
    /** Choose a preset or settle own values, each with a reason; signed where something open reads otherwise. */
    put: operations['SettingsController_change'];
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/settings/preview': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Which open deadlines and answers would read otherwise. Nothing is stored. */
    post: operations['SettingsController_preview'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/sign-on': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Which sign-on of somebody else people may come in by. */
    get: operations['SignOnController_offered'];
    put?: never;
    /** Begin to sign in there: answers where the browser goes. */
    post: operations['SignOnController_begin'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/sign-on/callback': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Where the sign-on sends the browser back to. */
    get: operations['SignOnController_callback'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/sign-on/link': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Prove yourself, to link your account there. */
    post: operations['SignOnController_link'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/sign-on/signature': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Begin to sign on anew, to sign this statement. */
    post: operations['SignOnController_signature'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/signatures': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Everything that stands signed in your own name here, the newest first. */
    get: operations['SignaturesController_own'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/signatures/{id}': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** One signature, verified against the bytes of its record entry. */
    get: operations['SignaturesController_one'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/stations': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Every station, and who is known to be authorised and equipped there. */
    get: operations['StationsController_list'];
    put?: never;
    /** Enter a station. */
    post: operations['EnteringController_station'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/stations/{code}/people': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Enter who is at a station and when, or that nobody is. */
    post: operations['StationsController_enter'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/stations/people/{id}/ended': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** It holds no longer. */
    post: operations['StationsController_end'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/zone-data': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** Which open deadlines newer time-zone data ends at another instant, and which end counts. */
    get: operations['ZoneDataController_view'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/zone-data/confirmation': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    get?: never;
    put?: never;
    /** Confirm by signature that these deadlines end as the newer data says. */
    post: operations['ZoneDataController_confirm'];
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
  '/api/zone-data/statement': {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    /** What a person certifies who confirms them. */
    get: operations['ZoneDataController_statement'];
    put?: never;
    post?: never;
    delete?: never;
    options?: never;
    head?: never;
    patch?: never;
    trace?: never;
  };
}
export type webhooks = Record<string, never>;
export interface components {
  schemas: {
    AcceptanceBody: {
      /** @description False when it is declined. */
      accepted: boolean;
      /** @description Why it is declined; needed then. */
      reason?: string;
      /**
       * @description As whom: the commander accepts, the dispatcher acknowledges the limits.
       * @enum {string}
       */
      role: 'commander' | 'dispatcher';
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    AcceptanceGiven: {
      /** @description False when it was declined. */
      accepted: boolean;
      reason: string | null;
      /** @description As whom. */
      role: string;
    };
    /** @description An acceptance of the aircraft for a flight. */
    AcceptanceLine: {
      /** @description False when it was declined. */
      accepted: boolean;
      /**
       * Format: date-time
       * @description When (ISO 8601)
       */
      at: string;
      /** @description Name. */
      by: string;
      reason: string | null;
      /** @description As whom: commander or dispatcher. */
      role: string;
      void: string[];
    };
    AcceptanceView: {
      /** @description id */
      aircraft: string;
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      flight: components['schemas']['FlightLine'];
      given: components['schemas']['AcceptanceLine'][];
      goodUntil: string | null;
      items: {
        basis: string | null;
        /** @description id */
        defect: string;
        limits: string[];
        /** @description Number. */
        number: string;
        operations: {
          /** @description The (O) procedure. */
          text: string;
          /** @description Which. */
          work: string;
        }[];
        /** @description What. */
        title: string;
        until: string | null;
      }[];
      /** @description How many things are left on the aircraft. */
      left: number;
      reasons: string[];
      /** @description Mark. */
      registration: string;
      /**
       * @description The answer.
       * @enum {string}
       */
      verdict: 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';
      /** @description The answer in words. */
      words: string;
    };
    AccountBody: {
      /** @description Licence or certificate number. */
      licence?: string;
      /** @description Name, as it stands in the licence. */
      name: string;
      /** @description The organisation that the person comes from. */
      organisation?: string;
      /** @description Roles. */
      roles: (
        | 'technician'
        | 'maintenance-control'
        | 'engineer'
        | 'commander'
        | 'dispatcher'
        | 'quality'
        | 'mel-engineer'
        | 'administrator'
      )[];
      /** @description Sign-in name; nobody else on this server has it. Small letters a to z, digits, and . _ @ + - in it. */
      signInName: string;
    };
    AccountMade: {
      firstSecret: string | null;
      firstUntil: string | null;
      person: components['schemas']['MemberView'];
    };
    ActDone: {
      defect: components['schemas']['DefectLine'];
      explanation: string | null;
      signed: {
        /** @description Authorisation number. */
        authorisation: string;
        /** @description Name. */
        by: string;
        /** @description Licence or certificate number. */
        licence: string;
        /**
         * @description The form of the signature.
         * @enum {string}
         */
        method: 'password' | 'passkey' | 'single-sign-on' | 'paper';
        /** @description Organisation with its approval number. */
        organisation: string;
        /** @description Role in which it was signed. */
        role: string;
        /**
         * Format: date-time
         * @description When it was signed (ISO 8601)
         */
        signedAt: string;
        /** @description What was certified. */
        statement: string;
      } | null;
    };
    AddAddressBody: {
      /**
       * @description The mailbox, or the http(s) address.
       * @example engineer@example.org
       */
      address: string;
      /** @description One aircraft; absent for every aircraft of the operator. */
      aircraft?: string;
      /**
       * @description A mailbox, or an endpoint of a program.
       * @enum {string}
       */
      kind: 'email' | 'webhook';
      /** @description What you call it. */
      label: string;
      /**
       * @description Your own, which ends when you leave, or that of the operator. Absent: your own.
       * @enum {string}
       */
      of?: 'me' | 'operator';
    };
    AircraftBody: {
      /** @description Code of the station where it is based. */
      base?: string;
      /** @description Configuration codes fitted, as the MEL names them; absent: not known. Empty: none of them. */
      configuration?: string[];
      /**
       * @description Registration, as it is painted.
       * @example Q-ABC
       */
      registration: string;
      /** @description Serial number; absent: not known, and entries by serial are then not settled. */
      serial?: number;
      /** @description Aircraft type, as the MEL for it says. */
      type: string;
    };
    AircraftEntered: {
      aircraft: components['schemas']['AircraftEntry'];
    };
    AircraftEntries: {
      /** @description Those that left the fleet included. */
      aircraft: components['schemas']['AircraftEntry'][];
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      stations: {
        /** @description code */
        code: string;
        /** @description name */
        name: string;
      }[];
      types: {
        /** @description Codes that its entries are told apart by. */
        configurations: string[];
        mel: string | null;
        /** @description Type. */
        type: string;
      }[];
    };
    AircraftEntry: {
      base: string | null;
      configuration: string[] | null;
      /** @description id */
      id: string;
      /** @description Mark. */
      registration: string;
      retiredAt: string | null;
      serial: number | null;
      /** @description Type. */
      type: string;
      /** @description Version, for If-Match. */
      version: number;
    };
    AircraftLegs: {
      /** @description id */
      aircraft: string;
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description What these legs used. */
      counters: {
        /** @description Off blocks to on blocks. */
        blockMinutes: number;
        /** @description Take-offs followed by a landing. */
        cycles: number;
        /** @description Days in the base on which one began. */
        flightDays: number;
        /** @description Airborne to touch-down. */
        flightMinutes: number;
        /** @description Legs that left the ground. */
        flights: number;
        /** @description Legs with a time not known. */
        incomplete: number;
        /** @description Landings. */
        landings: number;
      };
      /** @description Legs late for an aircraft defect (reason 41), beside the defects that may be why. */
      delayed: {
        /** @description Open then, or within the day before. */
        defects: {
          closedAt: string | null;
          /** @description What was written up. */
          description: string;
          entry: string | null;
          /** @description id */
          id: string;
          /** @description Number of the defect. */
          number: string;
          /**
           * Format: date-time
           * @description When it was recorded (ISO 8601)
           */
          recordedAt: string;
          /** @description How it stands. */
          state: string;
        }[];
        /** @description Flight number. */
        flight: string;
        /** @description id */
        leg: string;
        /** @description Minutes of delay for aircraft defects. */
        minutes: number;
        /**
         * Format: date-time
         * @description Off blocks (ISO 8601)
         */
        offBlockAt: string;
      }[];
      /**
       * Format: date-time
       * @description Legs that left from then on (ISO 8601)
       */
      from: string;
      /** @description In the order flown. */
      legs: {
        airborneAt: string | null;
        /** @description id */
        aircraft: string;
        /** @description Off blocks to on blocks. */
        blockMinutes: number;
        by: string | null;
        /** @description Take-offs followed by a landing. */
        cycles: number;
        /** @description Reasons of a late departure. */
        delays: {
          /** @description Two digits, AHM 730. */
          code: string;
          /** @description Minutes. */
          minutes: number;
        }[];
        diverted: {
          /** @description Where it was to land. */
          from: string;
          reason: string | null;
        } | null;
        /**
         * @description How it ended: `returned` flew, `ramp` did not.
         * @enum {string}
         */
        ending: 'arrived' | 'returned' | 'ramp' | 'under-way' | 'withdrawn';
        /** @description Flight number as in messages. */
        flight: string;
        /** @description Airborne to touch-down. */
        flightMinutes: number;
        from: string | null;
        /** @description Earlier versions, the first one first. */
        history: components['schemas']['LegLine'][];
        /** @description id */
        id: string;
        landedAt: string | null;
        /** @description Landings. */
        landings: number;
        message: string | null;
        /** @description Times that are not known. */
        missing: string[];
        /**
         * Format: date-time
         * @description Off blocks, or the first instant known (ISO 8601)
         */
        offBlockAt: string;
        onBlockAt: string | null;
        planned: string | null;
        reason: string | null;
        /**
         * Format: date
         * @description Scheduled UTC day of the flight.
         */
        scheduledOn: string;
        /** @description Among the legs of this flight and day. */
        sequence: number;
        /**
         * @description Who says so. What a person says stands until a person changes it.
         * @enum {string}
         */
        source: 'messages' | 'person';
        to: string | null;
        /** @description The ETag; the highest version counts. */
        version: number;
        /**
         * Format: date-time
         * @description When this version was written (ISO 8601)
         */
        writtenAt: string;
      }[];
      /** @description Mark. */
      registration: string;
    };
    AircraftView: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      configuration: string[] | null;
      flights: components['schemas']['FlightLine'][];
      /** @description id */
      id: string;
      items: components['schemas']['DefectLine'][];
      left: components['schemas']['LeftLine'][];
      mel: {
        /** @description document */
        document: string;
        /**
         * Format: date
         * @description day
         */
        effectiveOn: string;
        notice: string | null;
        /** @description revision */
        revision: string;
      } | null;
      /** @description Mark. */
      registration: string;
      serial: number | null;
      /** @description Type. */
      type: string;
      /** @description Version; the ETag. */
      version: number;
    };
    AllowedBody: {
      /** @description The aircraft that operations allow on it. */
      aircraft: string[];
      /** @description A planned flight. */
      flight: string;
    };
    AnswerBody: {
      /** @description Manual reference with its revision, where a check was made. */
      reference?: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description What was checked, or why it was raised in error. */
      words: string;
    };
    /** @description The answer for a planned flight. */
    AnswerStands: {
      /**
       * @description The answer.
       * @enum {string}
       */
      verdict: 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';
      /** @description The deciding reason. */
      why: string;
      /** @description In words. */
      words: string;
    };
    Anybody: {
      /** @description False while no operator was made on this server. */
      anybody: boolean;
    };
    AskExtensionBody: {
      /** @description Reference of the authority's agreement, where it is needed. */
      agreement?: string;
      /** @description Calendar days; absent asks for the longest allowed. */
      days?: number;
      /** @description True when the reason lies outside the operator's control. */
      outsideOperatorsControl: boolean;
      /** @description Parts that are waited for, with their orders. */
      parts?: string;
      /** @description The plan to rectify it: when, where, by whom. */
      plan: string;
      /** @description The reason, outside the operator's control. */
      reason: string;
      /** @description Why it was not rectified in time. */
      whyNotFixed: string;
    };
    AsWrittenBody: {
      /** @description The correction that was asked for. */
      asked: string;
      /** @description Why it stays as it is written. */
      reason: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    AuthorisationBody: {
      /** @description Aircraft types, joined by commas. */
      aircraftTypes: string;
      /** @description Licence categories, joined by commas. */
      licenceCategories?: string;
      /** @description Its number. */
      number: string;
      /** @description The organisation that grants it. */
      organisation: string;
      /** @description What it lets its holder do, joined by commas. */
      privileges: string;
      /** @description The signature of who grants it. */
      sign: components['schemas']['SignBody'];
      /** @description Valid from. */
      validFrom: string;
      /** @description Valid until before. */
      validUntil?: string;
    };
    AuthorityDocumentBody: {
      /** @description The authority that issued it. */
      authority: string;
      /** @description Its other conditions, in its own terms. */
      conditions?: string[];
      /** @description How many flights; absent when it names no number. */
      flights?: number;
      /** @description From when it is good. */
      from: string;
      /**
       * @description A permit to fly, or another document.
       * @enum {string}
       */
      kind: 'permit' | 'authority-document';
      /** @description The kinds of flight it allows; absent when it names none. */
      kindsOfFlight?: ('passenger' | 'cargo' | 'ferry' | 'training')[];
      /** @description The limit in the document's own terms. */
      limit: string;
      /**
       * @description Its number.
       * @example PF-12
       */
      number: string;
      /** @description The signature of the person who entered it. */
      sign: components['schemas']['SignBody'];
      /** @description Until when it is good (exclusive). */
      until: string;
    };
    BrokenBody: {
      /** @description MEL entry. */
      entry: string;
      /** @description The row to be tried; absent looks for the best one. */
      row?: string;
      /** @description The failed unit, or those of which one failed. */
      units: string[];
    };
    /** @description An address under which a calendar program reads deadlines. */
    CalendarFeed: {
      aircraft: string | null;
      /**
       * Format: date-time
       * @description When it was made (ISO 8601)
       */
      createdAt: string;
      /** @description It follows its person: every operator the person works for. */
      everywhere: boolean;
      /** @description id */
      id: string;
      /** @description What its owner calls it. */
      label: string;
      /** @description Whose it is. */
      of: string;
      registration: string | null;
      revokedAt: string | null;
    };
    CalendarFeedMade: {
      address: string | null;
      feed: components['schemas']['CalendarFeed'];
    };
    CalendarFeedRevoked: {
      feed: components['schemas']['CalendarFeed'];
    };
    CalendarFeeds: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description The newest first. */
      feeds: components['schemas']['CalendarFeed'][];
    };
    /** @description Something that the card alters: counted out and in. */
    CardAccount: {
      /** @description How many. */
      count: number;
      /** @description Which account. */
      id: string;
      /** @description What it is called once it is in: closed, reset, removed. */
      inWord: string;
      number: string | null;
      /** @description It has a number of its own, entered when it goes out and when it comes in. */
      numbered: boolean;
      /** @description What it is called while it is out: open, pulled, fitted. */
      outWord: string;
      /**
       * @description How it stands.
       * @enum {string}
       */
      state: 'not-yet' | 'out' | 'in' | 'stays';
      /** @description What it is. */
      what: string;
      /** @description Where it is. */
      where: string;
    };
    CardConfirmed: {
      /** @description The revision. */
      against: string;
      /** @description Which card. */
      card: string;
      confirmed: {
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        at: string;
        /** @description Who. */
        by: string;
      } | null;
    };
    CardFileBody: {
      /**
       * @description Name of the file, for errors.
       * @example cards.yaml
       */
      file: string;
      /** @description The text of the file, YAML or JSON. */
      text: string;
    };
    CardList: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      cards: {
        /** @description For which type. */
        aircraftType: string;
        /** @description Which card. */
        card: string;
        confirmed: {
          /**
           * Format: date-time
           * @description When (ISO 8601)
           */
          at: string;
          /** @description Who. */
          by: string;
        } | null;
        newerRevision: components['schemas']['ManualRevision'] | null;
        /** @description What it is for. */
        purpose: string;
        /** @description Manual reference with its revision. */
        reference: string;
        /** @description Its title. */
        title: string;
      }[];
      /** @description Libraries of cards that were loaded, the newest first. */
      libraries: {
        /** @description For which type. */
        aircraftType: string;
        /** @description Which library. */
        document: string;
        /** @description The day from which it is valid, as the file says. */
        effectiveOn: string;
        /** @description Its cards are those that are started now. */
        inForce: boolean;
        /**
         * Format: date-time
         * @description When it was loaded (ISO 8601)
         */
        loadedAt: string;
        /** @description Its revision. */
        revision: string;
      }[];
      /** @description Revisions of manuals that were recorded, newest first. */
      revisions: components['schemas']['ManualRevision'][];
      /** @description Where the library and the MEL in force do not fit, whichever was loaded last. */
      warnings: {
        /** @description For which type. */
        aircraftType: string;
        /** @description Which card. */
        card: string;
        /** @description In words. */
        reason: string;
      }[];
    };
    CardOffered: {
      /** @description Which card. */
      card: string;
      /** @description It is owed before each departure. */
      eachDeparture: boolean;
      /** @description How long they take together. */
      minutes: number;
      procedure: string | null;
      /** @description What it is for. */
      purpose: string;
      /** @description Manual reference with its revision. */
      reference: string;
      /** @description How many steps. */
      steps: number;
      /** @description Its title. */
      title: string;
    };
    CardSignatureBody: {
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description The work on the card. */
      work: string;
    };
    CardsLoaded: {
      /** @description How many. */
      cards: number;
      /** @description Which library. */
      document: string;
      /** @description Its revision. */
      revision: string;
      warnings: string[];
    };
    CardsOfDefect: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description Cards that may be started. */
      offered: components['schemas']['CardOffered'][];
      /** @description Work on cards, the last started first. */
      works: {
        /** @description Which card. */
        card: string;
        /** @description The work. */
        id: string;
        procedure: string | null;
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        startedAt: string;
        /** @description Who started it. */
        startedBy: string;
        /**
         * @description How it stands.
         * @enum {string}
         */
        state: 'open' | 'signed' | 'stopped';
        /** @description How many there are. */
        steps: number;
        /** @description How many steps are done. */
        stepsDone: number;
        /** @description Its title. */
        title: string;
      }[];
    };
    CardStep: {
      account: components['schemas']['CardAccount'] | null;
      begun: {
        /**
         * Format: date-time
         * @description The recorded start (ISO 8601)
         */
        begunAt: string;
        /** @description How long it lasts. */
        minutes: number;
        /**
         * Format: date-time
         * @description Not over before then (ISO 8601)
         */
        until: string;
      } | null;
      cautions: string[];
      done: {
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        at: string;
        /** @description Who. */
        by: string;
        second: string | null;
        used: string[];
        /** @description What was read, counted or found. */
        words: string;
      } | null;
      /** @description Which step. */
      id: string;
      inspects: string[];
      /**
       * @description What is asked.
       * @enum {string}
       */
      kind: 'do' | 'verify' | 'measure' | 'renew' | 'wait' | 'out' | 'in' | 'inspect' | 'run';
      licence: string[];
      look: string | null;
      measure: {
        /** @description Which reading. */
        id: string;
        /** @description What the card allows, in words. */
        limits: string;
        /** @description Its unit. */
        unit: string;
        /** @description What is read. */
        what: string;
      } | null;
      minutes: number | null;
      needs: {
        /** @description Until when it is calibrated, too. */
        calibrated: boolean;
        issued: string | null;
        /**
         * @description What kind of thing.
         * @enum {string}
         */
        kind: 'tool' | 'part' | 'equipment' | 'supplies' | 'second-person';
        last: {
          calibratedUntil: string | null;
          /** @description Its number. */
          number: string;
        } | null;
        licence: string[];
        /** @description Which one it is, is stated with the step. */
        stated: boolean;
        /** @description Which. */
        what: string;
      }[];
      readings: {
        /** @description Which reading. */
        id: string;
        /** @description What the card allows, in words. */
        limits: string;
        /** @description Its unit. */
        unit: string;
        /** @description What is read. */
        what: string;
      }[];
      renew: {
        /** @description The reference of its release certificate is asked for. */
        certified: boolean;
        /** @description How many. */
        count: number;
        /** @description Which part. */
        part: string;
      } | null;
      shownBy: string | null;
      /**
       * @description Where it stands; waits: for other steps.
       * @enum {string}
       */
      state: 'waits' | 'next' | 'begun' | 'ran' | 'done';
      takes: number | null;
      /** @description What is to be done. */
      text: string;
      waitsFor: string[];
    };
    CardStopBody: {
      /** @description Why it is stopped. */
      reason: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description The work on the card. */
      work: string;
    };
    /** @description The work on one card. */
    CardWork: {
      accounts: components['schemas']['CardAccount'][];
      /** @description Which card. */
      card: string;
      cautions: string[];
      confirmed: {
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        at: string;
        /** @description Who. */
        by: string;
      } | null;
      ended: {
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        at: string;
        /** @description Who. */
        by: string;
        /**
         * @description How.
         * @enum {string}
         */
        how: 'signed' | 'stopped';
      } | null;
      forFlight: string | null;
      /** @description The work, by the id it was started under. */
      id: string;
      missing: string[];
      newerRevision: components['schemas']['ManualRevision'] | null;
      procedure: string | null;
      /** @description What it is for. */
      purpose: string;
      /** @description Manual reference with its revision. The manual prevails. */
      reference: string;
      /**
       * Format: date-time
       * @description When (ISO 8601)
       */
      startedAt: string;
      /** @description Who started it. */
      startedBy: string;
      steps: components['schemas']['CardStep'][];
      /** @description Its title. */
      title: string;
    };
    CardWorkView: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      defect: components['schemas']['DefectLine'];
      /** @description Who may be named as a second person; none, where no step of the card needs one. */
      people: {
        /** @description id */
        id: string;
        /** @description name */
        name: string;
        roles: string[];
      }[];
      work: components['schemas']['CardWork'];
    };
    ChangeRowBody: {
      /** @description The closed defect of the other unit that had asked for the stricter row; then maintenance control signs, and the limit of that row ends with it. */
      causeClosed?: string;
      /** @description Why the row is changed. */
      reason: string;
      /** @description The row that it is to stand on from now on. */
      row: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    ChangesBody: {
      /** @description Items taken as failed. */
      broken?: components['schemas']['BrokenBody'][];
      /** @description Facts of the flight taken as known. */
      facts?: components['schemas']['SupposedFactBody'][];
      /** @description Open defects taken as fixed. */
      fix?: string[];
    };
    ChangeSecretBody: {
      /** @description The new one, 12 characters or more. */
      fresh: string;
      /** @description The secret that you have. */
      secret: string;
    };
    ChangeSettingsBody: {
      /** @description What is to be changed. */
      changes: components['schemas']['SettingChangeBody'][];
      /** @description The signature, where something open would change. */
      sign?: components['schemas']['SignBody'];
    };
    ChooseOperatorBody: {
      /** @description One of your operators. */
      operator: string;
    };
    CloseRequestBody: {
      /** @description Why it is declined or withdrawn. */
      because: string;
    };
    CodeBody: {
      /** @description Code of the invitation. */
      code: string;
    };
    ConditionAnswer: {
      /**
       * @description After the work that can be done before the flight.
       * @enum {string}
       */
      after: 'F' | 'U' | 'T';
      /** @description Why it holds, fails or is not known. */
      because: string;
      /** @description Entry, row and proviso. */
      id: string;
      /** @description What kind of condition. */
      kind: string;
      /**
       * @description As things are: false, unknown, true.
       * @enum {string}
       */
      now: 'F' | 'U' | 'T';
      /** @description The document of an authority without which it would not hold. */
      onlyUnder?: string;
      /** @description The condition in words. */
      text: string;
      tree?: components['schemas']['ExplainedNode'];
    };
    ConfirmationBody: {
      /** @description The revision it was held against. */
      against: string;
      /** @description The aircraft type. */
      aircraftType: string;
      /** @description Which card. */
      card: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    ConfirmZoneDataBody: {
      /** @description The signature under the statement that was shown. */
      sign: components['schemas']['SignBody'];
    };
    /** @description Something of an act that can be corrected. */
    Correctable: {
      /** @description Name under which it is corrected. */
      field: string;
      /** @description Which of several, from 0. */
      part: number;
      reads: string | null;
      /** @description It decides something, so a second person looks and signs. */
      secondLook: boolean;
      /** @description The same in words. */
      words: string;
    };
    CorrectBody: {
      /**
       * @description What was mistyped. Some are refused, with what to do instead.
       * @enum {string}
       */
      field:
        | 'description'
        | 'sheet'
        | 'system'
        | 'faultMessage'
        | 'occurredAt'
        | 'recordedAt'
        | 'whenFound'
        | 'unit'
        | 'reference'
        | 'issuedBy'
        | 'limit'
        | 'placardText'
        | 'workDone'
        | 'partNumber'
        | 'serialOn'
        | 'serialOff'
        | 'certificate'
        | 'test'
        | 'findings'
        | 'staysOpen'
        | 'checks'
        | 'reason'
        | 'watch'
        | 'remarks'
        | 'number'
        | 'authority'
        | 'doneAt'
        | 'lateReason'
        | 'whyNotFixed'
        | 'plan'
        | 'agreement'
        | 'aircraft'
        | 'entry'
        | 'row'
        | 'category'
        | 'interval'
        | 'until'
        | 'enteredAt'
        | 'work'
        | 'result'
        | 'complete'
        | 'outcome'
        | 'measured'
        | 'allowed';
      /** @description What it should read. The time in the log can only become earlier. */
      now: string;
      /** @description The act that is wrong, as its history names it; absent: the write-up. */
      of?: string;
      /** @description Which of several, from 0; absent: the first. */
      part?: number;
      /** @description Why it is corrected. */
      reason: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    CorrectionBody: {
      /**
       * @description Its place, or the number on it.
       * @enum {string}
       */
      field: 'where' | 'tag';
      /** @description The thing that was mistyped. */
      item: string;
      /** @description What should stand there. */
      now: string;
      /** @description Why. */
      reason: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    /** @description Something that was put right afterwards; what was written stays readable. */
    CorrectionLine: {
      /**
       * Format: date-time
       * @description When that was entered (ISO 8601)
       */
      at: string;
      /** @description Who corrected it. */
      by: string;
      /** @description What reads otherwise since, in words. */
      field: string;
      looked: string | null;
      /** @description What it reads now. */
      now: string;
      /** @description Why. */
      reason: string;
      struck: string | null;
      was: string | null;
    };
    /** @description A correction that waits for a second person. Until then all reads as it was, and while the item is open the aircraft does not leave. */
    CorrectionWaiting: {
      /**
       * Format: date-time
       * @description When it was asked for (ISO 8601)
       */
      at: string;
      /** @description Who corrected it. */
      by: string;
      /** @description What reads otherwise since, in words. */
      field: string;
      /** @description id */
      id: string;
      /** @description What it reads now. */
      now: string;
      /** @description Why. */
      reason: string;
      /** @description The line of the history that it would correct. */
      seq: number;
      was: string | null;
    };
    CrewPlacardBody: {
      /** @description Number on the placard, or the sheet it was cut from. */
      tag: string;
      /** @description What it says; the words that it is temporary and of the crew are put before it. */
      text: string;
      /** @description Where it is fitted. */
      where: string;
    };
    /** @description Until when a deferral is good. */
    DeadlineLine: {
      /** @description UTC or the zone the days are counted in. */
      base: string;
      /** @description True when it ends by flights, hours or cycles, on a day that nobody knows yet. */
      counted: boolean;
      endsAt: string | null;
      lastDay: string | null;
      /** @description True when it is over. */
      over: boolean;
      /** @description Each limit in its own unit. */
      parts: {
        /** @description The unit of the numbers: hours are given in minutes. */
        countedIn: string;
        endsAt: string | null;
        left: number | null;
        over: boolean | null;
        /** @description In words. */
        text: string;
        /** @description What it is counted in. */
        unit: string;
        used: number | null;
      }[];
      projected: {
        /**
         * Format: date-time
         * @description When it is expected to end (ISO 8601)
         */
        endsAt: string;
        /**
         * Format: date
         * @description The day of it, in the base.
         */
        lastDay: string;
        /**
         * @description From the planned flights, or beyond them from the mean use.
         * @enum {string}
         */
        method: 'plan' | 'mean-use';
        /** @description How it was found. */
        sentence: string;
        /**
         * @description A forecast, never a limit.
         * @enum {string}
         */
        state: 'projected';
      } | null;
      /** @description Version of the time-zone data. */
      tzdb: string;
      /** @description What is left, in words. */
      words: string;
    };
    /** @description A defect as it stands. */
    DefectLine: {
      /** @description Id of the aircraft. */
      aircraft: string;
      basis: string | null;
      /** @description Rows of items considered inoperative through this one: which of their work is owed, the answer says. */
      brought: {
        /** @description MEL entry considered inoperative. */
        entry: string;
        placard: {
          /** @description Fitted? */
          fitted: boolean;
          /** @description Where it belongs. */
          position: string;
          /** @description Its text. */
          text: string;
        } | null;
        /** @description A row of it. */
        row: string;
        /** @description Its title. */
        title: string;
        work: components['schemas']['WorkLine'][];
      }[];
      /** @description What was put right in it by corrections, in order. */
      corrected: components['schemas']['CorrectionLine'][];
      deadline: components['schemas']['DeadlineLine'] | null;
      deferredBy: components['schemas']['SignedBy'] | null;
      /** @description What was seen. */
      description: string;
      /**
       * Format: date-time
       * @description When it was entered here (ISO 8601)
       */
      enteredAt: string;
      entry: string | null;
      faultMessage: string | null;
      /** @description id */
      id: string;
      /** @description Number of the defect. */
      number: string;
      /** @description True when it is one of the units and nobody knows which. */
      oneOf: boolean;
      onItsFlight: components['schemas']['OnItsFlight'] | null;
      /** @description Who found it. */
      origin: string;
      placard: {
        /** @description Fitted? */
        fitted: boolean;
        /** @description Where it belongs. */
        position: string;
        /** @description Its text. */
        text: string;
      } | null;
      /** @description When it was recorded in the log, with the offset as written. */
      recordedAt: string;
      /** @description Mark of the aircraft. */
      registration: string;
      row: string | null;
      sheet: string | null;
      /** @description Where it stands, in words. */
      state: string;
      system: string | null;
      /** @description Title of the entry, or the first words of the description. */
      title: string;
      units: string[];
      /** @description Version; the ETag. */
      version: number;
      /** @description Corrections that wait for a second person to look. */
      waits: string[];
      whenFound: ('before-moving' | 'own-power' | 'after-take-off') | null;
      work: components['schemas']['WorkLine'][];
    };
    DefectList: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      defects: components['schemas']['DefectLine'][];
    };
    DefectView: {
      arithmetic: string | null;
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description Closed defects of other units, for which a row of several units was signed: control may let its limit go. */
      causesGone: {
        /**
         * Format: date-time
         * @description When it was closed (ISO 8601)
         */
        closedAt: string;
        /** @description id */
        id: string;
        /** @description Number of the defect. */
        number: string;
        units: string[];
      }[];
      /** @description Who concurred since the item last changed. */
      concurrence: {
        given: {
          /** @description Authorisation number. */
          authorisation: string;
          /** @description On which basis. */
          basis: string;
          /** @description Name. */
          by: string;
          /** @description Licence or certificate number. */
          licence: string;
          /**
           * @description The form of the signature.
           * @enum {string}
           */
          method: 'password' | 'passkey' | 'single-sign-on' | 'paper';
          /** @description Organisation with its approval number. */
          organisation: string;
          /** @description Role in which it was signed. */
          role: string;
          /**
           * Format: date-time
           * @description When it was signed (ISO 8601)
           */
          signedAt: string;
        }[];
        /** @description The operator asks for a second person before a basis is signed. */
        needed: boolean;
      };
      defect: components['schemas']['DefectLine'];
      /** @description What authorities allow beyond the deadline. */
      documents: components['schemas']['DocumentLine'][];
      history: components['schemas']['HistoryLine'][];
      left: components['schemas']['LeftLine'][];
      openWork: components['schemas']['OpenWork'] | null;
      /** @description Work that is owed again and again, in order of time. */
      repeats: components['schemas']['RepeatLine'][];
      /** @description Corrections that wait for a second person to look. */
      waiting: components['schemas']['CorrectionWaiting'][];
    };
    DeferBody: {
      /** @description A basis other than an MEL row. */
      document?: components['schemas']['DocumentBody'];
      /** @description The failed item; needed for an MEL row. */
      item?: components['schemas']['ItemBody'];
      /** @description The row of the MEL entry. */
      row?: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description From when use counts, where a document states it; absent: by row and settings. */
      start?: components['schemas']['StatedStartBody'];
    };
    DelayBody: {
      /**
       * @description Reason of the delay, AHM 730.
       * @example 41
       */
      code: string;
      /** @description Minutes. */
      minutes: number;
    };
    DocumentBody: {
      /** @description The interval it gives, such as "10 calendar-days". */
      interval?: string;
      /** @description Who issued it. */
      issuedBy: string;
      /**
       * @description What kind of document.
       * @enum {string}
       */
      kind: 'cdl' | 'nef' | 'approved-data' | 'design-approval' | 'permit' | 'authority-document';
      /** @description The limit in the document's own terms. */
      limit: string;
      /** @description Number or manual reference, with revision. */
      reference: string;
      /** @description From when that counts, where the document states it; absent: by the settings. */
      startsAt?: string;
      /** @description Its own last instant (exclusive). */
      until?: string;
    };
    /** @description What an authority allows beyond the deadline. It moves no deadline. */
    DocumentLine: {
      /** @description The authority that issued it. */
      authority: string;
      conditions: string[];
      /**
       * Format: date-time
       * @description When it was entered here (ISO 8601)
       */
      enteredAt: string;
      /** @description Who entered it. */
      enteredBy: string;
      flights: number | null;
      /** @description From when it is good. */
      from: string;
      kindsOfFlight: string[] | null;
      /** @description The limit in the document's own terms. */
      limit: string;
      /** @description Until when it is good (exclusive). */
      until: string;
      /** @description The document in words: "permit PF-12". */
      words: string;
    };
    EndedBody: {
      /** @description The document that ended or was withdrawn. */
      document: components['schemas']['OwnerDocumentBody'];
      /** @description Why. */
      reason: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    EngineCountBody: {
      /** @description When the counters read so, or when the run was. */
      at: string;
      /** @description Cycles: on the counter, or of the run. */
      cycles: number;
      /**
       * @description What its counters read, or what it used that no leg tells: a ground run, a start broken off.
       * @enum {string}
       */
      kind: 'reading' | 'run';
      /** @description Whole minutes: on the counter, or of the run. */
      minutes: number;
      /**
       * @description Where it stands: the unit, as the MEL names it.
       * @example 1
       */
      position: string;
      /** @description Where it is known from; when it is corrected, why. */
      reason: string;
      /** @description Serial number of the engine; needed for a reading. */
      serial?: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    EngineCounted: {
      /** @description Next flights whose answer changed. */
      answers: {
        after: components['schemas']['AnswerStands'];
        /** @description id */
        aircraft: string;
        before: components['schemas']['AnswerStands'];
        /** @description id */
        flight: string;
        /** @description Flight number. */
        number: string;
        /**
         * Format: date-time
         * @description Planned off-block (ISO 8601)
         */
        offBlockAt: string;
        /** @description Mark. */
        registration: string;
      }[];
      /** @description By position; engines of which nothing was ever read are not known. */
      counters: {
        /** @description Its cycles, now. */
        cycles: number;
        differed: {
          /** @description Cycles; negative likewise. */
          cycles: number;
          /** @description Minutes; negative where it read less. */
          minutes: number;
        } | null;
        /** @description Its hours in whole minutes, now. */
        minutes: number;
        /** @description Where it stands on the aircraft. */
        position: string;
        read: {
          /**
           * Format: date-time
           * @description When it was read last (ISO 8601)
           */
          at: string;
          /** @description What it read. */
          cycles: number;
          /** @description What it read. */
          minutes: number;
        };
        /** @description Serial number of the engine read last there. */
        serial: string;
        /** @description What an engine used. */
        since: {
          /** @description Cycles. */
          cycles: number;
          /** @description Minutes. */
          minutes: number;
        };
      }[];
      /** @description id */
      id: string;
      /** @description Open items whose standing changed. */
      items: {
        after: components['schemas']['ItemStands'];
        /** @description id */
        aircraft: string;
        before: components['schemas']['ItemStands'];
        /** @description id */
        defect: string;
        /** @description What it is. */
        description: string;
        /** @description Number of the defect. */
        number: string;
        /** @description Mark. */
        registration: string;
      }[];
      /** @description Version. */
      version: number;
    };
    /** @description One version of what was stated of an engine. */
    EngineCountLine: {
      /**
       * Format: date-time
       * @description When its counters read so, or when it ran (ISO 8601)
       */
      at: string;
      /** @description Who signed it. */
      by: string;
      /** @description On the counter, or of the run. */
      cycles: number;
      /** @description id */
      id: string;
      /**
       * @description A reading, use that no leg tells, or withdrawn: it was never so.
       * @enum {string}
       */
      kind: 'reading' | 'run' | 'withdrawn';
      /** @description On the counter, or of the run. */
      minutes: number;
      /** @description Where it stands on the aircraft. */
      position: string;
      /** @description Where it is known from, or why it was changed. */
      reason: string;
      serial: string | null;
      /** @description The ETag; the highest version counts. */
      version: number;
      /**
       * Format: date-time
       * @description When this version was written (ISO 8601)
       */
      writtenAt: string;
    };
    EnginesView: {
      /** @description id */
      aircraft: string;
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description By position; engines of which nothing was ever read are not known. */
      counters: {
        /** @description Its cycles, now. */
        cycles: number;
        differed: {
          /** @description Cycles; negative likewise. */
          cycles: number;
          /** @description Minutes; negative where it read less. */
          minutes: number;
        } | null;
        /** @description Its hours in whole minutes, now. */
        minutes: number;
        /** @description Where it stands on the aircraft. */
        position: string;
        read: {
          /**
           * Format: date-time
           * @description When it was read last (ISO 8601)
           */
          at: string;
          /** @description What it read. */
          cycles: number;
          /** @description What it read. */
          minutes: number;
        };
        /** @description Serial number of the engine read last there. */
        serial: string;
        /** @description What an engine used. */
        since: {
          /** @description Cycles. */
          cycles: number;
          /** @description Minutes. */
          minutes: number;
        };
      }[];
      /** @description The newest first. */
      counts: {
        /**
         * Format: date-time
         * @description When its counters read so, or when it ran (ISO 8601)
         */
        at: string;
        /** @description Who signed it. */
        by: string;
        /** @description On the counter, or of the run. */
        cycles: number;
        /** @description Earlier versions, the first one first. */
        history: components['schemas']['EngineCountLine'][];
        /** @description id */
        id: string;
        /**
         * @description A reading, use that no leg tells, or withdrawn: it was never so.
         * @enum {string}
         */
        kind: 'reading' | 'run' | 'withdrawn';
        /** @description On the counter, or of the run. */
        minutes: number;
        /** @description Where it stands on the aircraft. */
        position: string;
        /** @description Where it is known from, or why it was changed. */
        reason: string;
        serial: string | null;
        /** @description The ETag; the highest version counts. */
        version: number;
        /**
         * Format: date-time
         * @description When this version was written (ISO 8601)
         */
        writtenAt: string;
      }[];
      /** @description Mark. */
      registration: string;
    };
    EntryHit: {
      /**
       * @description Whether the entry is for this aircraft.
       * @enum {string}
       */
      applies: 'yes' | 'no' | 'not known';
      because: string[];
      /** @description System (ATA chapter). */
      chapter: string;
      /** @description Entry number. */
      number: string;
      /** @description Title. */
      title: string;
    };
    EntryHits: {
      hits: components['schemas']['EntryHit'][];
      /** @description What was looked for. */
      query: string;
    };
    EntryView: {
      /**
       * @description Whether the entry is for this aircraft.
       * @enum {string}
       */
      applies: 'yes' | 'no' | 'not known';
      /** @description Why, when not. */
      because: string;
      /** @description System (ATA chapter). */
      chapter: string;
      /** @description Entry number. */
      number: string;
      rows: {
        /**
         * @description Category.
         * @enum {string}
         */
        category: 'A' | 'B' | 'C' | 'D';
        covers: string[] | null;
        /** @description Row. */
        id: string;
        incomplete: string | null;
        /** @description The interval in words. */
        interval: string;
        notes: string[];
        /** @description Number installed. */
        numberInstalled: number;
        /** @description Number required for dispatch. */
        numberRequired: number;
        placard: {
          /** @description Where it belongs. */
          position: string;
          /** @description Its text. */
          text: string;
        } | null;
        procedures: unknown[];
        provisos: {
          /** @description id */
          id: string;
          /** @description In words. */
          text: string;
        }[];
        /** @description Remarks. */
        remarks: string;
      }[];
      source: string | null;
      /** @description Title. */
      title: string;
      /** @description Installed units. */
      units: string[];
    };
    EquipmentBody: {
      /**
       * @description Its last day of calibration, YYYY-MM-DD.
       * @example 2027-03-01
       */
      calibratedUntil?: string;
      /** @description The number that stands on it. */
      number: string;
      /**
       * @description Which need of the step, as the card calls it.
       * @example pressure gauge
       */
      what: string;
    };
    ErasureBody: {
      /** @description Why, for the record: without the name. */
      reason: string;
      /** @description The signature of who erases. */
      sign: components['schemas']['SignBody'];
    };
    /** @description A condition with its answer. */
    ExplainedNode: {
      /** @description The value used. */
      actual?: unknown;
      /**
       * @description After the work that can be done before the flight.
       * @enum {string}
       */
      after: 'F' | 'U' | 'T';
      /** @description Minutes since it was observed, when the answer was given. */
      ageMinutes?: number;
      /** @description Why its value is not known, or was not used. */
      because?: string;
      children?: components['schemas']['ExplainedNode'][];
      /** @description With what. */
      expected?: unknown;
      /** @description Key of the fact. */
      fact?: string;
      /** @description False when nobody has answered. */
      known?: boolean;
      mayAnswer?: string[];
      /**
       * @description What joins the parts.
       * @enum {string}
       */
      node: 'all' | 'any' | 'not' | 'leaf';
      /**
       * @description As things are: false, unknown, true.
       * @enum {string}
       */
      now: 'F' | 'U' | 'T';
      /** @description When it was observed. */
      observedAt?: string;
      /** @description How it is compared. */
      operator?: string;
      /** @description The question to ask. */
      question?: string;
      /** @description Where the value comes from. */
      source?: string;
      /** @description The sentence it stands for. */
      text: string;
      /** @description How long it holds, where it names no end. */
      validFor?: string;
      /** @description Until when it is good. */
      validUntil?: string;
    };
    ExtensionDone: {
      extension: components['schemas']['ExtensionLine'];
    };
    /** @description One extension of a rectification interval. */
    ExtensionLine: {
      /** @description Id of the aircraft. */
      aircraft: string;
      asked: {
        agreement: string | null;
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        at: string;
        /** @description Who asked. */
        by: string;
        days: number | null;
        parts: string | null;
        /** @description The plan. */
        plan: string;
        /** @description The reason, outside the operator's control. */
        reason: string;
        /** @description Why it was not rectified in time. */
        whyNotFixed: string;
      };
      /** @description UTC or the zone the days are counted in. */
      base: string;
      decided: {
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        at: string;
        because: string | null;
        /** @description Who granted, declined or withdrew it. */
        by: string;
      } | null;
      /** @description Id of the defect. */
      defect: string;
      endsAt: string | null;
      endsBefore: string | null;
      entry: string | null;
      /** @description id */
      id: string;
      lastDay: string | null;
      lastDayBefore: string | null;
      notice: components['schemas']['NoticeLine'] | null;
      /** @description Its number. */
      number: string;
      /** @description Its mark. */
      registration: string;
      /**
       * @description Where it stands.
       * @enum {string}
       */
      state: 'asked' | 'granted' | 'declined' | 'withdrawn' | 'replaced';
      /** @description First words of the description. */
      title: string;
      /** @description Version; the ETag. */
      version: number;
      /** @description The same in words. */
      words: string;
    };
    /** @description What an extension granted now would give. An unwelcome answer is an answer. */
    ExtensionOffer: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description Those of this defect, the newest first. */
      extensions: components['schemas']['ExtensionLine'][];
      offer: {
        endsAt: string | null;
        explanation: string | null;
        lastDay: string | null;
        lastDayBefore: string | null;
        noticeDueAt: string | null;
        /** @description The operator's approved procedure. */
        procedure: string;
      } | null;
      refused: {
        /** @description What to do next. */
        next: string;
        /** @description The paragraph it comes from. */
        paragraph: string;
        /** @description Why the operator may not extend. */
        sentence: string;
        /** @description Address of the type of refusal. */
        type: string;
      } | null;
    };
    ExtensionRegister: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description UTC or the zone of the operator. */
      base: string;
      /** @description The newest first. */
      extensions: components['schemas']['ExtensionLine'][];
      /** @description True when there are older ones than these. */
      more: boolean;
      /** @description How many notices of these are overdue. */
      overdue: number;
    };
    FactAnswered: {
      /** @description id */
      id: string;
      /** @description Key of the fact. */
      key: string;
      /** @description The answer. */
      value: unknown;
    };
    FactBody: {
      /** @description The flight it is about; absent for a fact of the aircraft. */
      flight?: string;
      /**
       * @description Key of the fact.
       * @example flight.icing
       */
      key: string;
      /** @description When it was observed. */
      observedAt: string;
      /** @description Where the answer comes from, such as a forecast with its number. */
      source: string;
      /** @description Until when it is good; absent means as long as such facts are. */
      validUntil?: string;
      /** @description The answer, of the type of the fact. */
      value: string | number | boolean;
    };
    FactList: {
      facts: {
        choices: string[] | null;
        goodForMinutes: number | null;
        /** @description Id; a key is the id, or the id with a subject in brackets. */
        id: string;
        /** @description What it is called. */
        label: string;
        mayAnswer: string[];
        /**
         * @description What stands in the brackets of its key.
         * @enum {string}
         */
        subject: 'none' | 'entry' | 'work' | 'judgement';
        /**
         * @description Type of its value.
         * @enum {string}
         */
        type: 'boolean' | 'number' | 'choice';
        unit: string | null;
      }[];
    };
    FitChangeBody: {
      /** @description Code of the station where it is based. */
      base?: string;
      /** @description Configuration codes fitted, as the MEL names them; absent: not known. Empty: none of them. */
      configuration?: string[];
      /** @description Why, such as the modification. */
      reason: string;
      /** @description Serial number; absent: not known, and entries by serial are then not settled. */
      serial?: number;
    };
    FittedBody: {
      /** @description What is left altered. */
      items: components['schemas']['LeftBody'][];
      /** @description What it belongs to. */
      owner: components['schemas']['OwnerDocumentBody'];
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    Fleet: {
      aircraft: components['schemas']['FleetLine'][];
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description The base zone. */
      base: string;
    };
    /** @description One aircraft as maintenance control sees it. */
    FleetLine: {
      ahead: {
        breaks: {
          flight: components['schemas']['FlightLine'];
          /**
           * @description Its answer.
           * @enum {string}
           */
          verdict: 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';
          /** @description The answer in words. */
          words: string;
        } | null;
        /** @description How many of the planned flights were looked at. */
        flights: number;
        /** @description Leading flights known to be kept. */
        kept: number;
        /** @description Leading flights that may be kept if the unknown turns out well. */
        possible: number;
      } | null;
      /** @description id */
      id: string;
      /** @description How many things are left on the aircraft. */
      leftOnAircraft: number;
      nextDeadline: {
        deadline: components['schemas']['DeadlineLine'];
        /** @description id */
        defect: string;
        /** @description Number of the defect. */
        number: string;
        /** @description What. */
        title: string;
      } | null;
      nextFlight: {
        accepted: components['schemas']['AcceptanceLine'][];
        flight: components['schemas']['FlightLine'];
        /**
         * @description The answer.
         * @enum {string}
         */
        verdict: 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';
        /** @description The deciding reason. */
        why: string;
        /** @description The answer in words. */
        words: string;
      } | null;
      /** @description How many items are open. */
      openItems: number;
      /** @description Mark. */
      registration: string;
      /** @description Type. */
      type: string;
      /** @description How many write-ups have no answer. */
      unanswered: number;
    };
    FleetRepeat: {
      /** @description Why, with what was counted. */
      because: string;
      /** @description Id of the defect. */
      defect: string;
      /** @description How many departures it was good for, or left without it. */
      departures: number;
      done: {
        /** @description name */
        by: string;
        /** @description when */
        doneAt: string;
        /**
         * Format: date-time
         * @description When it was entered here (ISO 8601)
         */
        enteredAt: string;
        lateReason: string | null;
      } | null;
      flight: {
        from: string | null;
        id: string | null;
        number: string | null;
        /**
         * Format: date-time
         * @description Off blocks (ISO 8601)
         */
        offBlockAt: string;
      } | null;
      /** @description Number of the defect. */
      number: string;
      /** @description Mark of the aircraft. */
      registration: string;
      /**
       * @description Done, left without, not known, owed, or not due yet.
       * @enum {string}
       */
      state: 'done' | 'missed' | 'not-known' | 'due' | 'coming';
      /** @description What is to be done. */
      text: string;
      /** @description The same in words. */
      words: string;
      /** @description Which work. */
      work: string;
    };
    FleetRepeats: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      repeats: components['schemas']['FleetRepeat'][];
    };
    FlightBody: {
      /** @description Airborne minutes planned. */
      flightMinutes?: number;
      /** @description Code of the station it leaves from. */
      from: string;
      /**
       * @description Flight number.
       * @example QX 107
       */
      number: string;
      /** @description Planned off-block. */
      offBlockAt: string;
      /** @description Planned on-block. */
      onBlockAt: string;
      /** @description Code of the station it goes to. */
      to: string;
    };
    FlightEntered: {
      flight: components['schemas']['FlightLine'];
    };
    /** @description A planned flight. */
    FlightLine: {
      flightMinutes: number | null;
      /** @description Station. */
      from: string;
      /** @description Name of the station. */
      fromName: string;
      /** @description id */
      id: string;
      /** @description Flight number. */
      number: string;
      /**
       * Format: date-time
       * @description Planned off-block (ISO 8601)
       */
      offBlockAt: string;
      /** @description The same as read on a clock at the station. */
      offBlockLocal: string;
      onBlockAt: string | null;
      /** @description Station. */
      to: string;
      /** @description Name of the station. */
      toName: string;
    };
    FlightPlanBody: {
      /**
       * @description Lines of flight, from, to, departure, arrival (UTC) and aircraft under a line with these names.
       * @example flight,from,to,departure,arrival,aircraft
       *     QX 107,QXA,QXB,2026-12-01T05:30Z,2026-12-01T07:10Z,Q-ABC
       */
      text: string;
    };
    FlightsPlanned: {
      /** @description Those that got flights. */
      aircraft: {
        /** @description id */
        id: string;
        /** @description Mark. */
        registration: string;
      }[];
      /** @description Flights of the list that were planned just so already. */
      kept: number;
      /** @description Flights planned by this list. */
      planned: number;
    };
    FoundBody: {
      /** @description What was found on the aircraft. */
      items: components['schemas']['LeftBody'][];
      /** @description How it was found. */
      remarks?: string;
    };
    GrantExtensionBody: {
      /** @description The signature of the person who grants it. */
      sign: components['schemas']['SignBody'];
    };
    HandOverBody: {
      /** @description What the next shift should know. */
      note?: string;
      /** @description The signature of who gives. */
      sign: components['schemas']['SignBody'];
      /** @description Who takes over: a shift, a person, a station. */
      to: string;
    };
    Health: {
      /** @description The database answers. */
      database: boolean;
      /** @description The server answers. */
      server: boolean;
    };
    HistoryLine: {
      /** @description What kind of act. */
      act: string;
      authorisation: string | null;
      /** @description Name. */
      by: string;
      /** @description What of it can be corrected. */
      correctable: components['schemas']['Correctable'][];
      /** @description What was put right in it afterwards, in order. */
      corrections: components['schemas']['CorrectionLine'][];
      /** @description The act as stored. */
      details: unknown;
      /**
       * Format: date-time
       * @description When it was entered here (ISO 8601)
       */
      enteredAt: string;
      /**
       * Format: date-time
       * @description The same as a clock at the base reads it, with its offset (ISO 8601)
       */
      enteredAtBase: string;
      /** @description Id of the act; a correction names it. */
      id: string;
      licence: string | null;
      method: string | null;
      occurredAt: string | null;
      /** @description Organisation with its approval number. */
      organisation: string;
      /** @description What of it no correction touches, and what to do instead. */
      otherwise: components['schemas']['PutRightOtherwise'][];
      /** @description When it was recorded in the log. */
      recordedAt: string;
      /** @description Role. */
      role: string;
      sealedAs: number | null;
      /** @description Order in the history. */
      seq: number;
      signedAt: string | null;
      statement: string | null;
      /** @description What happened, in words. */
      words: string;
    };
    HoldBody: {
      /**
       * @description What is held: a person, the log of an aircraft, or a defect.
       * @enum {string}
       */
      kind: 'person' | 'aircraft' | 'defect';
      /** @description Why, for the record: leave names out. */
      reason: string;
      /** @description Of the person, the aircraft or the defect. */
      subject: string;
    };
    Holds: {
      holds: {
        /** @description Name. */
        by: string;
        /** @description id */
        id: string;
        /**
         * @description What is held.
         * @enum {string}
         */
        kind: 'person' | 'aircraft' | 'defect';
        /** @description Its name as it is known today. */
        name: string;
        /**
         * Format: date-time
         * @description Since when (ISO 8601)
         */
        placedAt: string;
        /** @description Why. */
        reason: string;
        /** @description id of what is held */
        subject: string;
      }[];
    };
    IdentifyBody: {
      /**
       * @description MEL entry number.
       * @example 80-11-01
       */
      entry: string;
      /**
       * @description The failed unit, or the names of which one failed when nobody knows which.
       * @example [
       *       "1"
       *     ]
       */
      units: string[];
    };
    InspectBody: {
      /** @description What the second person looked at and found. */
      findings: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description Why one of those who did the work inspects it: an unforeseen case. */
      unforeseen?: string;
    };
    InspectionBody: {
      /** @description What the inspection found. */
      findings: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description Which step. */
      step: string;
      /** @description The work on the card. */
      work: string;
    };
    InvitationBody: {
      /** @description The organisation that the person comes from. */
      organisation?: string;
      /** @description Roles of whoever takes it up. */
      roles: (
        | 'technician'
        | 'maintenance-control'
        | 'engineer'
        | 'commander'
        | 'dispatcher'
        | 'quality'
        | 'mel-engineer'
        | 'administrator'
      )[];
    };
    InvitationLine: {
      /** @description id */
      id: string;
      notUsable: string | null;
      roles: string[];
      /**
       * Format: date-time
       * @description Until when it may be taken up (ISO 8601)
       */
      untilAt: string;
    };
    InvitationMade: {
      code: string | null;
      invitation: components['schemas']['InvitationLine'];
    };
    Invitations: {
      invitations: components['schemas']['InvitationLine'][];
    };
    InvitationSeen: {
      /** @description Name of the operator that invites. */
      operator: string;
      roles: string[];
      /** @description What is signed by taking it up. */
      statement: string;
      /**
       * Format: date-time
       * @description Until when it may be taken up (ISO 8601)
       */
      untilAt: string;
    };
    InvitationTaken: {
      /** @description Name of the operator. */
      operator: string;
    };
    InvitationWithdrawn: {
      invitation: components['schemas']['InvitationLine'];
    };
    ItemAnswer: {
      /**
       * @description After the work that can be done before the flight.
       * @enum {string}
       */
      after: 'F' | 'U' | 'T';
      cause:
        | {
            /** @description Id of the defect. */
            defect: string;
            /** @constant */
            kind: 'failed';
          }
        | {
            by: {
              /** @description entry */
              entry: string;
              /** @description row */
              row: string;
              /** @description unit */
              unit: string;
            };
            /** @constant */
            kind: 'considered-inoperative';
          };
      conditions: components['schemas']['ConditionAnswer'][];
      /** @description MEL entry. */
      entry: string;
      /**
       * @description As things are: false, unknown, true.
       * @enum {string}
       */
      now: 'F' | 'U' | 'T';
      /** @description True when it is only one of several that may be the failed one. */
      perhaps: boolean;
      row: string | null;
      /** @description Its title. */
      title: string;
      /** @description The unit that is down. */
      unit: string;
    };
    ItemBody: {
      /**
       * @description MEL entry number.
       * @example 80-11-01
       */
      entry: string;
      /**
       * @description The failed unit, or the names of which one failed when nobody knows which.
       * @example [
       *       "1"
       *     ]
       */
      units: string[];
    };
    /** @description How an open item stands. */
    ItemStands: {
      endsAt: string | null;
      over: boolean | null;
      used: components['schemas']['UsedSince'] | null;
      /** @description What is left, in words. */
      words: string;
    };
    JoinBody: {
      /** @description The open item that it is another entry of. */
      other: string;
      /** @description Why it is the same defect. */
      reason: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    JudgementBody: {
      /** @description Accepted or not. */
      accepted: boolean;
      /** @description The flight it is given for; absent for all flights until something changes. */
      flight?: string;
      /** @description `<entry>/<row>/<judgement>`, or `combination`. */
      judgement: string;
      /** @description Why. */
      reason?: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description Until when it is good. */
      validUntil?: string;
    };
    JudgementGiven: {
      /** @description Accepted? */
      accepted: boolean;
      /** @description id */
      id: string;
      /** @description Which. */
      judgement: string;
    };
    LeavingBody: {
      /** @description Why, for the record: no more than is needed. */
      reason: string;
    };
    LeftAlteredBody: {
      /** @description What is left altered. */
      items: components['schemas']['LeftBody'][];
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    LeftBody: {
      /** @description The thing, where it is on the aircraft already for another open item. */
      id?: string;
      /**
       * @description What kind of thing it is.
       * @enum {string}
       */
      kind:
        | 'breaker'
        | 'lock-pin'
        | 'valve-position'
        | 'connector-capped'
        | 'panel-open'
        | 'equipment-removed'
        | 'placard'
        | 'tool';
      /** @description Number on its collar, streamer, placard or label. */
      tag: string;
      /** @description How it is undone. */
      undo: string;
      /** @description Where it is: panel and position. */
      where: string;
    };
    /** @description Something left on the aircraft. */
    LeftLine: {
      defect: string | null;
      defectNumber: string | null;
      /** @description id */
      id: string;
      /** @description What kind of thing. */
      kind: string;
      /** @description What it belongs to, in words; "nobody" for an orphan. */
      owner: string;
      /** @description Number on its collar, streamer, placard or label. */
      tag: string;
      /** @description How it is undone. */
      undo: string;
      /** @description Where it is. */
      where: string;
    };
    LegBody: {
      /** @description Airborne. */
      airborneAt?: string;
      /** @description Reasons of a late departure. */
      delays: components['schemas']['DelayBody'][];
      /**
       * @description Arrived; returned to where it left from, flown; back on the ramp, not flown; under way; or withdrawn: it was no leg.
       * @enum {string}
       */
      ending: 'arrived' | 'returned' | 'ramp' | 'under-way' | 'withdrawn';
      /**
       * @description Flight number as in messages.
       * @example QB410
       */
      flight: string;
      /**
       * @description Station it left from.
       * @example QXA
       */
      from: string;
      /** @description Touch-down. */
      landedAt?: string;
      /** @description Landings, where touch-and-goes make more than one. */
      landings?: number;
      /** @description Off blocks. */
      offBlockAt: string;
      /** @description On blocks. */
      onBlockAt?: string;
      /** @description Why a person enters or corrects it. */
      reason: string;
      /**
       * @description Scheduled UTC day of the flight.
       * @example 2026-05-14
       */
      scheduledOn: string;
      /**
       * @description Station it arrived at, or is bound for.
       * @example QXB
       */
      to?: string;
    };
    /** @description One version of a leg. */
    LegLine: {
      airborneAt: string | null;
      /** @description id */
      aircraft: string;
      /** @description Off blocks to on blocks. */
      blockMinutes: number;
      by: string | null;
      /** @description Take-offs followed by a landing. */
      cycles: number;
      /** @description Reasons of a late departure. */
      delays: {
        /** @description Two digits, AHM 730. */
        code: string;
        /** @description Minutes. */
        minutes: number;
      }[];
      diverted: {
        /** @description Where it was to land. */
        from: string;
        reason: string | null;
      } | null;
      /**
       * @description How it ended: `returned` flew, `ramp` did not.
       * @enum {string}
       */
      ending: 'arrived' | 'returned' | 'ramp' | 'under-way' | 'withdrawn';
      /** @description Flight number as in messages. */
      flight: string;
      /** @description Airborne to touch-down. */
      flightMinutes: number;
      from: string | null;
      /** @description id */
      id: string;
      landedAt: string | null;
      /** @description Landings. */
      landings: number;
      message: string | null;
      /** @description Times that are not known. */
      missing: string[];
      /**
       * Format: date-time
       * @description Off blocks, or the first instant known (ISO 8601)
       */
      offBlockAt: string;
      onBlockAt: string | null;
      planned: string | null;
      reason: string | null;
      /**
       * Format: date
       * @description Scheduled UTC day of the flight.
       */
      scheduledOn: string;
      /** @description Among the legs of this flight and day. */
      sequence: number;
      /**
       * @description Who says so. What a person says stands until a person changes it.
       * @enum {string}
       */
      source: 'messages' | 'person';
      to: string | null;
      /** @description The ETag; the highest version counts. */
      version: number;
      /**
       * Format: date-time
       * @description When this version was written (ISO 8601)
       */
      writtenAt: string;
    };
    LegWritten: {
      /** @description Next flights whose answer changed. */
      answers: {
        after: components['schemas']['AnswerStands'];
        /** @description id */
        aircraft: string;
        before: components['schemas']['AnswerStands'];
        /** @description id */
        flight: string;
        /** @description Flight number. */
        number: string;
        /**
         * Format: date-time
         * @description Planned off-block (ISO 8601)
         */
        offBlockAt: string;
        /** @description Mark. */
        registration: string;
      }[];
      /** @description Open items whose standing changed. */
      items: {
        after: components['schemas']['ItemStands'];
        /** @description id */
        aircraft: string;
        before: components['schemas']['ItemStands'];
        /** @description id */
        defect: string;
        /** @description What it is. */
        description: string;
        /** @description Number of the defect. */
        number: string;
        /** @description Mark. */
        registration: string;
      }[];
      leg: components['schemas']['LegLine'];
    };
    LookBody: {
      /** @description The correction that waits. */
      asked: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    LossBody: {
      /** @description The authority that was told. */
      authority: string;
      /** @description From when on something is missing. */
      from: string;
      /** @description What was lost, and how. */
      lost: string;
      /** @description Out of what it was made anew: sheets, work orders, the record of the engine shop. */
      madeFrom: string;
      /** @description The reference under which it was told. */
      reference: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description Until when. */
      until: string;
    };
    Losses: {
      losses: {
        /** @description The authority that was told. */
        authority: string;
        /** @description Name. */
        by: string;
        /** @description From when on something is missing. */
        from: string;
        /** @description What was lost, and how. */
        lost: string;
        /** @description Out of what it was made anew. */
        madeFrom: string;
        /** @description The reference under which it was told. */
        reference: string;
        sealedAs: number | null;
        /**
         * Format: date-time
         * @description When it was signed (ISO 8601)
         */
        signedAt: string;
        /** @description What was certified. */
        statement: string;
        /** @description Until when. */
        until: string;
      }[];
    };
    MakeFeedBody: {
      /** @description One aircraft; absent for every aircraft of the operator. */
      aircraft?: string;
      /** @description Your own feed: every deferral of every operator you work for at the time it is read. */
      everywhere?: boolean;
      /** @description What you call it, such as the device that reads it. */
      label: string;
    };
    ManualRevision: {
      /** @description The day it was issued. */
      issuedOn: string;
      /** @description The manual. */
      manual: string;
      /** @description The revision. */
      revision: string;
      task: string | null;
    };
    ManualRevisionBody: {
      /**
       * @description The day it was issued, YYYY-MM-DD.
       * @example 2026-03-01
       */
      issuedOn: string;
      /**
       * @description The manual.
       * @example K-AMM
       */
      manual: string;
      /**
       * @description The revision.
       * @example 13
       */
      revision: string;
      /** @description The task; absent: the whole manual. */
      task?: string;
    };
    MelFileBody: {
      /**
       * @description Name of the file, for errors.
       * @example mel.yaml
       */
      file: string;
      /** @description The text of the file, YAML or JSON. */
      text: string;
    };
    MelLoaded: {
      /** @description How many entries. */
      entries: number;
      revision: components['schemas']['MelRevision'];
      warnings: string[];
    };
    MelRevision: {
      /** @description Type. */
      aircraftType: string;
      /** @description Document. */
      document: string;
      /**
       * Format: date
       * @description From this day on.
       */
      effectiveOn: string;
      /** @description id */
      id: string;
      /** @description True for the revision in force. */
      inForce: boolean;
      /**
       * Format: date-time
       * @description When it was loaded (ISO 8601)
       */
      loadedAt: string;
      /** @description Revision. */
      revision: string;
      /** @description SHA-256 of the content. */
      sha256: string;
    };
    MelRevisions: {
      revisions: components['schemas']['MelRevision'][];
    };
    MemberChanged: {
      person: components['schemas']['MemberView'];
    };
    Members: {
      /** @description The types of this operator. */
      aircraftTypes: string[];
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      organisations: {
        /** @description Approval number. */
        approval: string;
        /** @description id */
        id: string;
        /** @description Name. */
        name: string;
      }[];
      people: components['schemas']['MemberView'][];
    };
    MemberView: {
      authorisations: {
        aircraftTypes: string[];
        /** @description id */
        id: string;
        licenceCategories: string[];
        /** @description Number. */
        number: string;
        oneOff: {
          /** @description Why. */
          because: string;
          /** @description Id of the defect it is for. */
          defect: string;
        } | null;
        /** @description Who gave it, with its approval number. */
        organisation: string;
        privileges: string[];
        revokedAt: string | null;
        /**
         * Format: date-time
         * @description Valid from (ISO 8601)
         */
        validFrom: string;
        validUntil: string | null;
      }[];
      /** @description id */
      id: string;
      licence: string | null;
      lockedAt: string | null;
      /** @description Name. */
      name: string;
      organisation: string | null;
      roles: string[];
      /**
       * Format: date-time
       * @description Works here from (ISO 8601)
       */
      validFrom: string;
      validUntil: string | null;
      /** @description Works here now. */
      works: boolean;
    };
    MendBody: {
      /** @description Why. */
      reason: string;
      /** @description The corrected text, or the message that was missing; absent when it stays as it is. */
      text?: string;
    };
    MoveBody: {
      /** @description The open item they belong to from now on. */
      defect?: string;
      /** @description Or the document they belong to from now on. */
      document?: components['schemas']['OwnerDocumentBody'];
      /** @description Ids of the things; all of one owner. */
      items: string[];
      /** @description Why. */
      reason: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description True when the open item that has them keeps them too. */
      together: boolean;
    };
    MovedBody: {
      /** @description The thing left on the aircraft. */
      item: string;
      /** @description Where it is now. */
      where: string;
    };
    MovementMended: {
      /**
       * Format: date-time
       * @description When it was mended (ISO 8601)
       */
      at: string;
      /** @description Id of the entry. */
      id: string;
      received: components['schemas']['MovementsReceived'] | null;
    };
    MovementsBody: {
      /** @description When it was received; absent means now. */
      receivedAt?: string;
      /**
       * @description One movement message or many, as they came: MVT, MVA, DIV, with COR for a correction.
       * @example MVT
       *     QB410/14.QABD.QXA
       *     AD0730/0740 EA0900 QXB
       */
      text: string;
    };
    MovementsReceived: {
      /** @description Next flights whose answer changed. */
      answers: {
        after: components['schemas']['AnswerStands'];
        /** @description id */
        aircraft: string;
        before: components['schemas']['AnswerStands'];
        /** @description id */
        flight: string;
        /** @description Flight number. */
        number: string;
        /**
         * Format: date-time
         * @description Planned off-block (ISO 8601)
         */
        offBlockAt: string;
        /** @description Mark. */
        registration: string;
      }[];
      /**
       * Format: date-time
       * @description When it was taken in (ISO 8601)
       */
      at: string;
      delivery: string | null;
      /** @description Open items whose standing changed. */
      items: {
        after: components['schemas']['ItemStands'];
        /** @description id */
        aircraft: string;
        before: components['schemas']['ItemStands'];
        /** @description id */
        defect: string;
        /** @description What it is. */
        description: string;
        /** @description Number of the defect. */
        number: string;
        /** @description Mark. */
        registration: string;
      }[];
      /** @description New versions of legs. */
      legs: components['schemas']['LegLine'][];
      /** @description What was read, in the order of the text. */
      messages: {
        aircraft: string | null;
        /** @description True for COR. */
        correction: boolean;
        flight: string | null;
        /** @description id */
        id: string;
        /** @description Where it begins in the text, from 1. */
        line: number;
        /**
         * Format: date-time
         * @description When it was first received (ISO 8601)
         */
        receivedAt: string;
        registration: string | null;
        scheduledOn: string | null;
        /**
         * @description A duplicate was known and changes nothing.
         * @enum {string}
         */
        state: 'read' | 'tray' | 'mended' | 'duplicate';
        station: string | null;
        /** @description The message. */
        text: string;
        type: ('MVT' | 'MVA' | 'DIV') | null;
        unknownLines: string[];
        warnings: string[];
      }[];
      /** @description What no longer waits. */
      settled: components['schemas']['TrayLine'][];
      /** @description What waits for a person since this delivery. */
      tray: components['schemas']['TrayLine'][];
    };
    MovementTray: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      entries: components['schemas']['TrayLine'][];
    };
    NewPasskeyBody: {
      /** @description What you call it: the telephone, the key ring. */
      label: string;
      /** @description The answer of the browser. */
      passkey: components['schemas']['PasskeyBody'];
    };
    /** @description One flight of the plan, judged as if all before it were flown as planned. */
    NextFlight: {
      /** @description Conditions answered otherwise than for the flight before. */
      changed: {
        about: string | null;
        /** @description Why. */
        because: string;
        /** @description Which condition. */
        id: string;
        is: {
          /**
           * @description After the work that can be done before the flight.
           * @enum {string}
           */
          after: 'F' | 'U' | 'T';
          /**
           * @description As things are.
           * @enum {string}
           */
          now: 'F' | 'U' | 'T';
        } | null;
        /** @description The condition with its reason, in one sentence. */
        says: string;
        was: {
          /**
           * @description After the work that can be done before the flight.
           * @enum {string}
           */
          after: 'F' | 'U' | 'T';
          /**
           * @description As things are.
           * @enum {string}
           */
          now: 'F' | 'U' | 'T';
        } | null;
      }[];
      flight: components['schemas']['PlannedFlight'];
      /** @description Minutes on the ground before it. */
      groundMinutes: number;
      ifFlown: string | null;
      lateMinutes: number | null;
      /** @description What is left of each interval at its departure. */
      left: {
        /** @description Id of the defect. */
        defect: string;
        endsAt: string | null;
        entry: string | null;
        limits: {
          /** @description Unit. */
          countedIn: string;
          left: number | null;
          /** @description In words. */
          text: string;
        }[];
        row: string | null;
        /** @description What is left at departure. */
        sentence: string;
      }[];
      /** @description Work that is owed again before it. */
      repeats: {
        /** @description Why it is owed. */
        because: string;
        defect: string | null;
        fits: boolean | null;
        /**
         * Format: date-time
         * @description From when (ISO 8601)
         */
        from: string;
        minutes: number | null;
        /**
         * @description Whether somebody can do it there.
         * @enum {string}
         */
        possible: 'F' | 'U' | 'T';
        /** @description Where the aircraft stands. */
        station: string;
        /** @description What is to be done. */
        text: string;
        /**
         * Format: date-time
         * @description Until when (ISO 8601)
         */
        until: string;
        /** @description Which work. */
        work: string;
      }[];
      verdict: components['schemas']['Verdict'];
    };
    /** @description The flights planned for one aircraft, one after another. */
    NextFlights: {
      /** @description id */
      aircraft: string;
      /**
       * Format: date-time
       * @description When this was computed (ISO 8601)
       */
      at: string;
      breaks: {
        because: string[];
        /** @description id */
        flight: string;
        /** @description Where. */
        station: string;
        /**
         * @description Its answer.
         * @enum {string}
         */
        verdict: 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';
      } | null;
      flights: components['schemas']['NextFlight'][];
      /** @description Leading flights known to be kept. */
      kept: number;
      /** @description Leading flights that may be kept if the unknown turns out well. */
      possible: number;
      /** @description Mark. */
      registration: string;
      rows: {
        /** @description MEL entry. */
        entry: string;
        row: string | null;
        /** @description Signed? */
        signed: boolean;
        /** @description Unit. */
        unit: string;
      }[];
      /** @description The fewest changes first. */
      savers: components['schemas']['Saver'][];
      /** @description False reads: these, perhaps others. */
      saversComplete: boolean;
      /** @description False when a better choice of rows may exist. */
      shownBest: boolean;
    };
    NoticeBody: {
      /** @description When it was sent, or acknowledged by the authority. */
      at: string;
      /** @description Reference: number of the message, name of the inspector. */
      reference: string;
      /**
       * @description What happened to the notice.
       * @enum {string}
       */
      what: 'sent' | 'acknowledged';
    };
    /** @description The notice to the authority. */
    NoticeLine: {
      acknowledged: {
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        at: string;
        /** @description Who entered it. */
        by: string;
        /** @description Reference. */
        reference: string;
      } | null;
      /** @description Address of the printable document. */
      address: string;
      dueAt: string | null;
      /** @description True when it was not sent by its time. */
      late: boolean;
      sent: {
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        at: string;
        /** @description Who entered it. */
        by: string;
        /** @description Reference. */
        reference: string;
      } | null;
      /**
       * @description Where the notice stands.
       * @enum {string}
       */
      state: 'none' | 'due' | 'overdue' | 'sent' | 'acknowledged';
      /** @description The same in words. */
      words: string;
    };
    OneOffBody: {
      /** @description Why nobody else can, and what makes this person fit for it. */
      because: string;
      /** @description The open defect it is for. */
      defect: string;
      /**
       * @description What one signature may be given for.
       * @enum {string}
       */
      privilege: 'defer' | 'sign-procedure' | 'inspect' | 'release';
      /** @description The signature of who issues it. */
      sign: components['schemas']['SignBody'];
      /** @description Until when it may be used. */
      validUntil: string;
    };
    /** @description Whether the MEL decides about the flight on which it was found. A later flight waits for an answer in any case. */
    OnItsFlight: {
      /** @description Who and what prevails. */
      caution: string;
      /**
       * @description What holds for that flight.
       * @enum {string}
       */
      holds: 'mel-applies' | 'decide-before-take-off' | 'commander-judges' | 'no-relief' | 'not-known';
      /**
       * @description How well it is known.
       * @enum {string}
       */
      mark: 'SEEN' | 'SEEN-Q' | 'SEEN-2' | 'DERIVED' | 'FROM MEMORY' | 'COMMON PRACTICE';
      /** @description Where it comes from. */
      source: string;
      /** @description The same in words. */
      words: string;
    };
    Opening: {
      steps: {
        by: (
          | 'technician'
          | 'maintenance-control'
          | 'engineer'
          | 'commander'
          | 'dispatcher'
          | 'quality'
          | 'mel-engineer'
          | 'administrator'
        )[];
        /** @description Whether it was taken. */
        done: boolean;
        /** @description Address of the page for it. */
        page: string;
        /** @description Which. */
        step: string;
        /** @description What is to be done. */
        what: string;
      }[];
    };
    /** @description Work begun and not yet released. */
    OpenWork: {
      /** @description False while something of the work is still to be done. */
      complete: boolean;
      /** @description Inspected since the last piece of work. */
      inspected: boolean;
      /** @description An independent inspection is asked for. */
      inspectionAsked: boolean;
      /** @description Who had a hand in the work. */
      performers: string[];
      /** @description Something was altered, so somebody signs that all is back to normal. */
      restorationOwed: boolean;
      /** @description Signed since the last piece of work. */
      restored: boolean;
      /** @description Work cards that were stopped half-worked, and what of them is not done. */
      stopped: string[];
      /** @description A test is asked for. */
      testAsked: boolean;
      tested: ('good' | 'not-good') | null;
      /** @description Somebody went over the aircraft since anything was touched. */
      verified: boolean;
    };
    OrganisationBody: {
      /** @description Number of its approval. */
      approval: string;
      /** @description Its name, as in its approval. */
      name: string;
    };
    OrganisationEntered: {
      /** @description id */
      id: string;
    };
    OwnerDocumentBody: {
      /**
       * @description What kind of document.
       * @enum {string}
       */
      kind: 'modification' | 'directive' | 'permit';
      /**
       * @description Its number, with revision.
       * @example MOD 27-114 revision 2
       */
      reference: string;
      /** @description Its last instant (exclusive); absent when it has no end. */
      until?: string;
    };
    PasskeyAsked: {
      /** @description Id of the challenge. */
      challenge: string;
      /** @description What the browser is asked for. */
      options: unknown;
    };
    PasskeyBody: {
      /** @description Id of the challenge that was answered. */
      challenge: string;
      /** @description What the browser answered, as JSON (WebAuthn). */
      response: {
        [key: string]: unknown;
      };
    };
    Passkeys: {
      passkeys: {
        /**
         * Format: date-time
         * @description Added (ISO 8601)
         */
        createdAt: string;
        /** @description id */
        id: string;
        /** @description What its owner calls it. */
        label: string;
        lastUsedAt: string | null;
      }[];
      /** @description What is certified when one is added. */
      statement: string;
    };
    PersonErased: {
      list: {
        /** @description What that means for backups. */
        says: string;
        /** @description The list of erasures outside the database has it. */
        written: boolean;
      };
      person: components['schemas']['MemberView'];
      written: components['schemas']['WrittenNames'];
    };
    PlacardBody: {
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description Number on the placard. */
      tag: string;
      /** @description The text on the placard. */
      text: string;
      /** @description Where it is fitted. */
      where: string;
    };
    /** @description A planned flight. */
    PlannedFlight: {
      /** @description Block minutes planned. */
      blockMinutes?: number;
      /** @description What is known of it, by fact key. */
      facts?: {
        [key: string]: unknown;
      };
      /** @description Airborne minutes planned. */
      flightMinutes?: number;
      /** @description Station. */
      from: string;
      /** @description id */
      id: string;
      /** @description Flight number. */
      number?: string;
      /**
       * Format: date-time
       * @description Planned off-block (ISO 8601)
       */
      offBlockAt: string;
      /**
       * Format: date-time
       * @description Planned on-block (ISO 8601)
       */
      onBlockAt?: string;
      /** @description Station. */
      to: string;
    };
    PlannedFlights: {
      /** @description In order of off blocks, the first thousand of them. */
      flights: components['schemas']['FlightLine'][];
      /** @description Whether more are planned than are listed. */
      hasMore: boolean;
      /** @description Mark. */
      registration: string;
    };
    PreviewSettingsBody: {
      /** @description What is to be changed. */
      changes: components['schemas']['SettingChangeBody'][];
    };
    /** @description RFC 9457 problem details. `type` is the contract. */
    Problem: {
      /** @description The version that stands now. */
      current?: number;
      /** @description This case. */
      detail: string;
      /** @description Each thing that is wrong. */
      errors?: {
        /** @description Work card it stands in, for an error in a file. */
        card?: string;
        /** @description MEL entry it stands in, for an error in a file. */
        entry?: string;
        /** @description JSON pointer into the request, or into the file that was sent. */
        pointer: string;
        /** @description Reason. */
        reason: string;
        /** @description Step of that card. */
        step?: string;
      }[];
      /** @description The facts named in the detail, by name. */
      facts?: {
        [key: string]: unknown;
      };
      /** @description This one occurrence, for the administrator. */
      instance?: string;
      /**
       * Format: date-time
       * @description Until when the name is locked (ISO 8601)
       */
      lockedUntil?: string;
      /** @description Who may do it instead. */
      mayAnswer?: string[];
      /** @description What to do next. */
      next?: string;
      /** @description The paragraph the rule comes from. */
      paragraph?: string;
      /** @description The statement to be signed, when another one was sent back. */
      statement?: string;
      /** @description The HTTP status. */
      status: number;
      /** @description What is wrong. */
      title: string;
      /** @description Address of the type. */
      type: string;
    };
    ProblemType: {
      /** @description What to do next. */
      next: string;
      paragraph: string | null;
      /** @description The HTTP status, always the same one. */
      status: number;
      /** @description What is wrong. */
      title: string;
      /** @description Address of the type. */
      type: string;
    };
    ProblemTypes: {
      problems: components['schemas']['ProblemType'][];
    };
    ProcedureBody: {
      /** @description When it was done. */
      doneAt: string;
      /** @description The flight it was done for, where it is owed before each departure. */
      forFlight?: string;
      /** @description Why it is entered after the aircraft left; needed when it is. */
      lateReason?: string;
      /** @description What it leaves altered on the aircraft. */
      leaves: components['schemas']['LeftBody'][];
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /**
       * @description Which work: `<entry>/<row>/<procedure>`.
       * @example 80-11-01/1/M1
       */
      work: string;
    };
    ProposalBody: {
      /** @description The open defect; absent for a defect that is not written up yet. */
      defect?: string;
      /** @description MEL entry. */
      entry: string;
      /** @description The row to be tried. */
      row: string;
      /** @description The failed unit, or those of which one failed. */
      units: string[];
    };
    /** @description Something of an act that no correction touches. */
    PutRightOtherwise: {
      /** @description Why no correction touches it. */
      because: string;
      /** @description Name under which it is asked for. */
      field: string;
      /** @description What to do instead. */
      instead: string;
      /** @description The same in words. */
      words: string;
    };
    QuestionBody: {
      /** @description The aircraft. */
      aircraft: string;
      /** @description Another instant than now. */
      at?: string;
      /** @description Changes to be tried. */
      changes?: components['schemas']['ChangesBody'];
      /** @description The flight, perhaps one planned for another aircraft; absent asks without a flight, so that all flight facts are unknown. */
      flight?: string;
      /** @description Rows to be tried. */
      propose: components['schemas']['ProposalBody'][];
    };
    /** @description What is asked, and what then; or the answer that is reached. */
    QuestionNode:
      | {
          /** @description Key of the fact. */
          ask: string;
          then: {
            next: components['schemas']['QuestionNode'];
            /** @description One of them. */
            value: unknown;
            /** @description How likely it is taken to be. */
            weight: number;
            /** @description The reply, or the replies that make the same difference. */
            words: string;
          }[];
        }
      | {
          /**
           * @description The answer.
           * @enum {string}
           */
          verdict: 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';
        };
    /** @description Which question to ask next; made anew after each reply. */
    QuestionPlan: {
      expected: number | null;
      /**
       * @description How the order was found.
       * @enum {string}
       */
      method: 'least-expected' | 'most-likely-to-settle' | 'listed' | 'nothing-to-ask';
      /** @description The same in words, with what is taken for granted. */
      model: string;
      /** @description Those on which the answer still depends, the one to ask first in front. */
      questions: {
        /** @description Key of the fact. */
        fact: string;
        mayAnswer: string[];
        neededBy: string[];
        /** @description The question. */
        question: string;
        replies: {
          /** @description One of them. */
          value: unknown;
          /** @description How likely it is taken to be. */
          weight: number;
          /** @description The reply, or the replies that make the same difference. */
          words: string;
        }[];
        /** @description How likely the reply settles the answer at once. */
        settles: number;
      }[];
      tree: components['schemas']['QuestionNode'] | null;
      /**
       * @description The answer now.
       * @enum {string}
       */
      verdict: 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';
    };
    ReadingBody: {
      /** @description Which reading of the step. */
      id: string;
      /** @description Its unit. */
      unit: string;
      /** @description The value read. */
      value: number;
    };
    ReasonBody: {
      /** @description Why, for the record: no more than is needed. */
      reason: string;
    };
    RecordEntries: {
      entries: {
        /** @description Name. */
        by: string;
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        enteredAt: string;
        /**
         * Format: date-time
         * @description The same as a clock at the base reads it, with its offset (ISO 8601)
         */
        enteredAtBase: string;
        /** @description id */
        id: string;
        /** @description Leaf hash, hex. */
        leaf: string;
        number: number | null;
        /** @description What was recorded. */
        payload: unknown;
        sealedAt: string | null;
        /** @description What was done. */
        what: string;
      }[];
    };
    RecordHead: {
      root: string | null;
      /** @description How many entries. */
      size: number;
    };
    RecordHeads: {
      heads: {
        /** @description Fingerprint of the key it was signed with. */
        key: string;
        /** @description Whose record it is. */
        log: string;
        /** @description Root hash, hex. */
        root: string;
        /** @description Ed25519, hex. */
        signature?: string;
        /**
         * Format: date-time
         * @description When it was signed (ISO 8601)
         */
        signedAt?: string;
        /** @description Over how many entries. */
        size: number;
      }[];
      keys: {
        /** @description First 16 hex digits of its SHA-256. */
        fingerprint: string;
        /** @description The public key. */
        pem: string;
      }[];
    };
    /** @description A whole history, re-checkable without the house. */
    RecordHistory: {
      about: {
        /**
         * Format: date-time
         * @description When it was made (ISO 8601)
         */
        madeAt: string;
        /** @description Entries written since the head, which are not in it. */
        notIn: number;
        /** @description Name and code. */
        operator: string;
        /** @description Aircraft or defect. */
        subject: string;
      };
      cautions: string[];
      /** @description How to check it. */
      check: string;
      earlier: {
        head: {
          /** @description Whose record it is. */
          log: string;
          /** @description Root hash, hex. */
          root: string;
          /** @description Ed25519, hex. */
          signature?: string;
          /**
           * Format: date-time
           * @description When it was signed (ISO 8601)
           */
          signedAt?: string;
          /** @description Over how many entries. */
          size: number;
        };
        /** @description How the record grew since that head. */
        proof: string[];
      } | null;
      entries: {
        /** @description The entry word for word: the text whose UTF-8 bytes were hashed. */
        canonical: string;
        /** @description Leaf hash, hex. */
        leaf: string;
        /** @description Its number. */
        number: number;
        /** @description From the leaf to the head. */
        proof: string[];
      }[];
      /** @description proviso-record-proof/1 */
      format: string;
      /** @description The newest signed head; bare where none is signed. */
      head: {
        /** @description Whose record it is. */
        log: string;
        /** @description Root hash, hex. */
        root: string;
        /** @description Ed25519, hex. */
        signature?: string;
        /**
         * Format: date-time
         * @description When it was signed (ISO 8601)
         */
        signedAt?: string;
        /** @description Over how many entries. */
        size: number;
      };
      /** @description Whose record it is. */
      log: string;
      /** @description Who stands behind each reference; null for an erased person. Told, not proved. */
      people: {
        [key: string]: {
          licence: string | null;
          /** @description Name. */
          name: string;
        } | null;
      };
    };
    /** @description What `proviso record check` checks without the house. */
    RecordProof: {
      earlier: {
        head: {
          /** @description Whose record it is. */
          log: string;
          /** @description Root hash, hex. */
          root: string;
          /** @description Ed25519, hex. */
          signature?: string;
          /**
           * Format: date-time
           * @description When it was signed (ISO 8601)
           */
          signedAt?: string;
          /** @description Over how many entries. */
          size: number;
        };
        /** @description How the record grew since that head. */
        proof: string[];
      } | null;
      entries: {
        /** @description The entry word for word: the text whose UTF-8 bytes were hashed. */
        canonical: string;
        /** @description Leaf hash, hex. */
        leaf: string;
        /** @description Its number. */
        number: number;
        /** @description From the leaf to the head. */
        proof: string[];
      }[];
      /** @description proviso-record-proof/1 */
      format: string;
      /** @description The newest signed head; bare where none is signed. */
      head: {
        /** @description Whose record it is. */
        log: string;
        /** @description Root hash, hex. */
        root: string;
        /** @description Ed25519, hex. */
        signature?: string;
        /**
         * Format: date-time
         * @description When it was signed (ISO 8601)
         */
        signedAt?: string;
        /** @description Over how many entries. */
        size: number;
      };
      /** @description Whose record it is. */
      log: string;
    };
    RecordState: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      backup: {
        /** @description From so many hours on a backup is late. */
        atMostHours: number;
        hours: number | null;
        made: string | null;
        /** @description It is late, or none was ever made. */
        old: boolean;
        unsavedHours: number | null;
        unsavedSince: string | null;
      };
      /** @description A longer record is verified by the command. */
      mostVerified: number;
      root: string | null;
      signedHead: {
        hours: number | null;
        made: string | null;
        /** @description It is old, or there is none. */
        old: boolean;
        /** @description From this age on it counts as old. */
        oldestHours: number;
        size: number | null;
      };
      /** @description This server signs heads. */
      signsHeads: boolean;
      /** @description How many entries. */
      size: number;
    };
    RecordVerified: {
      /**
       * Format: date-time
       * @description When it was verified (ISO 8601)
       */
      at: string;
      /** @description Sealed entries that were read. */
      entries: number;
      misfit: {
        /** @description What kind. */
        kind: string;
        number: number | null;
        /** @description What does not fit. */
        sentence: string;
      } | null;
      /** @description Root hash over what was read, hex. */
      root: string;
      /** @description Written and not yet sealed. */
      waiting: number;
    };
    RectifyBody: {
      /** @description False while something of the work is still to be done. */
      complete: boolean;
      /** @description True when the card or the list asks for an independent inspection. */
      inspectionAsked: boolean;
      /** @description Part number of the part fitted. */
      partNumber?: string;
      /** @description Manual reference with its revision. */
      reference: string;
      /** @description Serial number of the part removed. */
      serialOff?: string;
      /** @description Serial number of the part fitted. */
      serialOn?: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description True when the card or the list asks for a test. */
      testAsked: boolean;
      /** @description What was done. */
      workDone: string;
    };
    RecurrenceBody: {
      /** @description Why, and what is done about it. */
      reason: string;
      /** @description Whether it is a repetitive defect. */
      repetitive: boolean;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    RecurrenceDecided: {
      /** @description Why. */
      reason: string;
      /** @description What was decided. */
      repetitive: boolean;
    };
    RecurrenceView: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description What maintenance control decided, the newest last. */
      decided: {
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        at: string;
        /** @description Name. */
        by: string;
        /** @description Why, and what is done. */
        reason: string;
        /** @description What was decided. */
        repetitive: boolean;
      }[];
      /** @description id */
      defect: string;
      /** @description Number. */
      number: string;
      /** @description True when the rule says so. */
      repetitive: boolean;
      /** @description The operator's rule, in words. */
      rule: string;
      /** @description How many write-ups, this one counted. */
      times: number;
      /** @description This write-up first, then those before it that are like it. */
      writeUps: {
        alikeBy: string[];
        /** @description False where a counter that matters is not known. */
        certain: boolean;
        /** @description id */
        defect: string;
        /** @description What was seen. */
        description: string;
        entry: string | null;
        faultMessage: string | null;
        /** @description Number. */
        number: string;
        /** @description When it was recorded in the log, with the offset as written. */
        recordedAt: string;
        /** @description How it ended, or how it stands. */
        state: string;
        system: string | null;
        units: string[];
        work: string[];
      }[];
    };
    RegisterDone: {
      /** @description Who did it. */
      by: string;
      /** @description True. */
      done: boolean;
    };
    /** @description A line of the register. */
    RegisterLine: {
      /** @description Other open items that need it too. */
      alsoFor: {
        /** @description id */
        defect: string;
        /** @description Number. */
        number: string;
      }[];
      defect: string | null;
      /**
       * Format: date-time
       * @description When it was entered as fitted (ISO 8601)
       */
      fittedAt: string;
      /** @description Name. */
      fittedBy: string;
      /** @description id */
      id: string;
      /** @description What kind of thing. */
      kind: string;
      /** @description What it belongs to, in words; "nobody" for an orphan. */
      owner: string;
      ownerKind: ('defect' | 'modification' | 'directive' | 'permit') | null;
      ownerUntil: string | null;
      removedAt: string | null;
      removedBy: string | null;
      /** @description Number on its collar, streamer, placard or label. */
      tag: string;
      under: string | null;
      /** @description How it is undone. */
      undo: string;
      verifiedAt: string | null;
      verifiedBy: string | null;
      /** @description Where it is. */
      where: string;
    };
    RegisterView: {
      /** @description id */
      aircraft: string;
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description Corrections that wait for a second person to look. */
      corrections: {
        /** @description Id of the person who asks, and may take it back. */
        askedBy: string;
        /** @description Who asks. */
        by: string;
        /** @description What is wrong. */
        field: string;
        /** @description id */
        id: string;
        /** @description The thing. */
        item: string;
        /** @description What should stand there. */
        now: string;
        /** @description Why. */
        reason: string;
        /** @description What stands there. */
        was: string;
      }[];
      lastTaken: {
        /**
         * Format: date-time
         * @description When it was given (ISO 8601)
         */
        at: string;
        /** @description Who gives. */
        by: string;
        /** @description id */
        id: string;
        left: string[];
        /** @description What the next shift should know. */
        note: string;
        open: string[];
        /** @description What they said. */
        remarks: string;
        /**
         * Format: date-time
         * @description When (ISO 8601)
         */
        takenAt: string;
        /** @description Who took over. */
        takenBy: string;
        /** @description Who is to take over. */
        to: string;
      } | null;
      left: components['schemas']['RegisterLine'][];
      offered: {
        /**
         * Format: date-time
         * @description When it was given (ISO 8601)
         */
        at: string;
        /** @description Who gives. */
        by: string;
        /** @description id */
        id: string;
        left: string[];
        /** @description What the next shift should know. */
        note: string;
        open: string[];
        /** @description Who is to take over. */
        to: string;
      } | null;
      open: string[];
      openWork: string[];
      orphans: string[];
      /** @description Mark. */
      registration: string;
      /** @description What was undone last. */
      undone: components['schemas']['RegisterLine'][];
      /** @description Version of the aircraft; the ETag. */
      version: number;
    };
    ReleaseBody: {
      /** @description True when a B2 holder releases a minor task of their own. */
      asMinorTask?: boolean;
      /**
       * @description Whether the defect is closed, or the work is released and the defect stays open.
       * @enum {string}
       */
      outcome?: 'closed' | 'stays-open';
      /** @description The signature under the release statement. */
      sign: components['schemas']['SignBody'];
      /** @description What stays open: incomplete work is stated in the release. */
      staysOpen?: string[];
      /** @description The general verification, where it is signed together with the release. */
      verified?: components['schemas']['VerifiedBody'];
    };
    ReleaseHoldBody: {
      /** @description Why it need not be held any longer, for the record: leave names out. */
      reason: string;
    };
    /** @description One reminder, of a deferral or of what is past its period of keeping, to one address. */
    Reminder: {
      /** @description id of the address */
      address: string;
      /** @description How often it was tried. */
      attempts: number;
      defect: string | null;
      /** @description id; also the webhook-id, and what the Message-ID begins with. */
      id: string;
      /** @description What was left. */
      left: string;
      nextAt: string | null;
      /**
       * Format: date-time
       * @description When the share was noticed (ISO 8601)
       */
      noticedAt: string;
      number: string | null;
      sentAt: string | null;
      /** @description Percent of what is left at which it was due; 0 at the end. */
      share: number;
      /**
       * @description Not delivered: tried in vain, and tried again.
       * @enum {string}
       */
      state: 'waiting' | 'sent' | 'not delivered' | 'refused' | 'passed over' | 'dropped';
      /** @description What it is. */
      title: string;
      /** @description Where it goes. */
      to: string;
      triedAt: string | null;
      /** @description How it stands, in a sentence. */
      words: string;
    };
    /** @description Where reminders go. */
    ReminderAddress: {
      /** @description Where it goes. */
      address: string;
      aircraft: string | null;
      codeProblem: string | null;
      codeSentAt: string | null;
      confirmedAt: string | null;
      /**
       * Format: date-time
       * @description When it was entered (ISO 8601)
       */
      createdAt: string;
      endedAt: string | null;
      endedBecause: string | null;
      /** @description It is the operator’s own, and stays when that person leaves. */
      forAll: boolean;
      /** @description id */
      id: string;
      /**
       * @description A mailbox, or an endpoint of a program.
       * @enum {string}
       */
      kind: 'email' | 'webhook';
      /** @description What its owner calls it. */
      label: string;
      /** @description You may turn it off. */
      mayEnd: boolean;
      /** @description You entered it. */
      mine: boolean;
      /** @description Who entered it. */
      of: string;
      registration: string | null;
      twoSecretsUntil: string | null;
      /** @description A code was sent there, and can be told. */
      waitsForCode: boolean;
    };
    ReminderAddressConfirmed: {
      address: components['schemas']['ReminderAddress'];
    };
    ReminderAddressEnded: {
      address: components['schemas']['ReminderAddress'];
    };
    ReminderAddressEntered: {
      address: components['schemas']['ReminderAddress'];
      secret: string | null;
    };
    Reminders: {
      /** @description Yours and those of the operator, the newest first. */
      addresses: components['schemas']['ReminderAddress'][];
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description UTC or the zone of the operator’s days. */
      base: string;
      /** @description You may enter addresses of the operator. */
      mayAddForAll: boolean;
      /** @description There are older ones. */
      more: boolean;
      /** @description To these addresses, the newest first. */
      reminders: components['schemas']['Reminder'][];
      sends: {
        /** @description This server sends to endpoints. */
        endpoints: boolean;
        /** @description It may reach machines inside. */
        inside: boolean;
        /** @description This server knows a mail server. */
        mail: boolean;
      };
      /** @description At which shares of what is left reminders go out. */
      shares: string[];
      /** @description How many of them wait after an attempt in vain, or were refused. */
      undelivered: number;
    };
    /** @description One time that work was done, missed, or is owed. */
    RepeatLine: {
      /** @description Why, with what was counted. */
      because: string;
      /** @description How many departures it was good for, or left without it. */
      departures: number;
      done: {
        /** @description name */
        by: string;
        /** @description when */
        doneAt: string;
        /**
         * Format: date-time
         * @description When it was entered here (ISO 8601)
         */
        enteredAt: string;
        lateReason: string | null;
      } | null;
      flight: {
        from: string | null;
        id: string | null;
        number: string | null;
        /**
         * Format: date-time
         * @description Off blocks (ISO 8601)
         */
        offBlockAt: string;
      } | null;
      /**
       * @description Done, left without, not known, owed, or not due yet.
       * @enum {string}
       */
      state: 'done' | 'missed' | 'not-known' | 'due' | 'coming';
      /** @description What is to be done. */
      text: string;
      /** @description The same in words. */
      words: string;
      /** @description Which work. */
      work: string;
    };
    RestoreBody: {
      /** @description Manual reference with its revision. */
      reference: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    Retention: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      defects: {
        /** @description It is kept all the same until it is released. */
        held: boolean;
        /** @description id */
        id: string;
        /**
         * Format: date-time
         * @description When it ended (ISO 8601)
         */
        keptUntil: string;
        notedAt: string | null;
        /** @description Number of the defect. */
        number: string;
        /**
         * Format: date-time
         * @description What the period is counted from (ISO 8601)
         */
        since: string;
      }[];
      /** @description The program erases leavers by itself, as the operator settled. */
      erasesLeavers: boolean;
      holds: {
        /** @description Name. */
        by: string;
        /** @description id */
        id: string;
        /**
         * @description What is held.
         * @enum {string}
         */
        kind: 'person' | 'aircraft' | 'defect';
        /** @description Its name as it is known today. */
        name: string;
        /**
         * Format: date-time
         * @description Since when (ISO 8601)
         */
        placedAt: string;
        /** @description Why. */
        reason: string;
        /** @description id of what is held */
        subject: string;
      }[];
      logs: {
        /** @description It is kept all the same until it is released. */
        held: boolean;
        /** @description id */
        id: string;
        /**
         * Format: date-time
         * @description When it ended (ISO 8601)
         */
        keptUntil: string;
        notedAt: string | null;
        /** @description Mark of the aircraft. */
        registration: string;
        /**
         * Format: date-time
         * @description What the period is counted from (ISO 8601)
         */
        since: string;
      }[];
      months: {
        /** @description The log, after its last entry. */
        log: number;
        /** @description Records of work, after release. */
        work: number;
      };
      people: {
        /** @description It is kept all the same until it is released. */
        held: boolean;
        /** @description id */
        id: string;
        /**
         * Format: date-time
         * @description When it ended (ISO 8601)
         */
        keptUntil: string;
        /** @description Name. */
        name: string;
        notedAt: string | null;
        /** @description In the record. */
        reference: string;
        /**
         * Format: date-time
         * @description What the period is counted from (ISO 8601)
         */
        since: string;
      }[];
      /** @description What this list does not do. */
      says: string;
    };
    RolesBody: {
      /** @description Why, for the record: no more than is needed. */
      reason: string;
      /** @description The roles from now on. */
      roles: (
        | 'technician'
        | 'maintenance-control'
        | 'engineer'
        | 'commander'
        | 'dispatcher'
        | 'quality'
        | 'mel-engineer'
        | 'administrator'
      )[];
    };
    /** @description One way to save the first flight that breaks. */
    Saver: {
      defects?: string[];
      flights?: string[];
      /** @description Leading flights kept with it. */
      keeps: number;
      /**
       * @description What kind of change.
       * @enum {string}
       */
      kind: 'fix' | 'change-row' | 'do-work' | 'send-person' | 'leave-out' | 'several';
      minutes: number | null;
      /** @description Of several changes that help only together: each of them. */
      parts?: {
        /**
         * @description What kind of change.
         * @enum {string}
         */
        kind: 'fix' | 'change-row' | 'do-work' | 'send-person' | 'leave-out';
        /** @description In words. */
        words: string;
      }[];
      /** @description The row. */
      row?: string;
      /** @description How many changes it is. */
      size: number;
      /** @description Where it can be done, the latest first. */
      stops: components['schemas']['Stop'][];
      /** @description In words. */
      text: string;
      work?: string[];
    };
    SecondAskedBody: {
      /** @description Who is there as the second person. */
      person: string;
      /** @description The statement that was shown to the second person, word for word. */
      statement: string;
      /** @description Which step. */
      step: string;
      /** @description The work on the card. */
      work: string;
    };
    SecondLookBody: {
      /** @description The correction that was asked for. */
      asked: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    SecondPersonBody: {
      /** @description Or a passkey of the second person that signed this, asked for by `card-seconds`. */
      passkey?: components['schemas']['PasskeyBody'];
      /** @description Who is there as the second person. */
      person: string;
      /** @description The second person's own secret. */
      secret?: string;
      /** @description The statement that was shown to the second person, word for word. */
      statement?: string;
    };
    ServiceBody: {
      /** @description Why it leaves the fleet, or comes back. */
      reason: string;
    };
    SessionView: {
      /**
       * Format: date-time
       * @description The time on the server (ISO 8601)
       */
      at: string;
      /** @description How often somebody tried in vain to prove the secret of this person, since that was last seen. */
      failedAttempts: number;
      /** @description By which means this person may sign. */
      means: {
        /** @description The secret is a first one still: an own one has to be chosen. */
        first: boolean;
        /** @description With a passkey. */
        passkey: boolean;
        /** @description With the secret. */
        secret: boolean;
        signOn: string | null;
      };
      operator: {
        /** @description UTC or the zone of its calendar days. */
        base: string;
        /** @description code */
        code: string;
        /** @description id */
        id: string;
        /** @description True for a demo operator. */
        invented: boolean;
        /**
         * @description Which record is the legal original.
         * @enum {string}
         */
        legalOriginal: 'paper' | 'electronic';
        /** @description name */
        name: string;
        newerZoneData: string | null;
      } | null;
      /** @description The operators this person works for. */
      operators: {
        /** @description code */
        code: string;
        /** @description id */
        id: string;
        /** @description name */
        name: string;
        roles: string[];
      }[];
      person: {
        /** @description id */
        id: string;
        /** @description Name. */
        name: string;
      };
      /** @description Roles for the chosen operator. */
      roles: string[];
    };
    SettingChange: {
      /** @description In words. */
      after: string;
      /** @description In words. */
      before: string;
      /** @description Which setting. */
      key: string;
      /** @description Why. */
      reason: string;
      /** @description What it is called. */
      title: string;
    };
    SettingChangeBody: {
      /**
       * @description Which setting; `preset` chooses the preset.
       * @example expiryInFlight
       */
      key: string;
      /** @description Why. */
      reason: string;
      /** @description The operator's own value; absent or null goes back to the value of the preset. */
      value?: string | number | boolean | string[];
    };
    /** @description Something open that reads otherwise under other settings. */
    SettingEffect: {
      /**
       * @description What reads otherwise.
       * @enum {string}
       */
      about: 'deadline' | 'use' | 'extension' | 'answer';
      /** @description How it would read. A signed deadline stays. */
      after: string;
      /** @description How it reads now. */
      before: string;
      /** @description Number of the defect, or of the flight. */
      of: string;
      /** @description Mark of the aircraft. */
      registration: string;
    };
    /** @description Something that the operator settles. */
    SettingLine: {
      /** @description What it decides. */
      about: string;
      choices:
        | {
            /** @description As sent. */
            value: string;
            /** @description In words. */
            words: string;
          }[]
        | null;
      kept: string | null;
      /** @description Which setting. */
      key: string;
      own: {
        /** @description Why; recorded with it. */
        reason: string;
        /** @description The operator's own value. A text, a number, true / false, a list of texts, or null for none. */
        value: unknown;
        /** @description The same in words. */
        words: string;
      } | null;
      preset: {
        /**
         * @description How well it is known.
         * @enum {string}
         */
        mark: 'SEEN' | 'SEEN-Q' | 'SEEN-2' | 'DERIVED' | 'FROM MEMORY' | 'COMMON PRACTICE';
        /** @description Where it comes from. */
        source: string;
        /** @description The value of the preset. A text, a number, true / false, a list of texts, or null for none. */
        value: unknown;
        /** @description The same in words. */
        words: string;
      };
      range: {
        /** @description Least. */
        least: number;
        /** @description Most. */
        most: number;
        /** @description Unit. */
        unit: string;
      } | null;
      /**
       * @description What kind of value it takes.
       * @enum {string}
       */
      takes: 'choice' | 'some-of' | 'yes-no' | 'whole' | 'text' | 'codes' | 'zone';
      /** @description What it is called. */
      title: string;
      /** @description The value in force. A text, a number, true / false, a list of texts, or null for none. */
      value: unknown;
      /** @description The same in words. */
      words: string;
    };
    SettingsPreview: {
      /**
       * Format: date-time
       * @description When this was computed (ISO 8601)
       */
      at: string;
      changes: components['schemas']['SettingChange'][];
      effects: components['schemas']['SettingEffect'][];
      statement: string | null;
    };
    SettingsView: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /**
       * @description The preset in use.
       * @enum {string}
       */
      preset: 'easa' | 'faa' | 'tcca-2006' | 'tcca-2022' | 'custom';
      /** @description Everything that the operator settles. */
      settings: components['schemas']['SettingLine'][];
    };
    Signatures: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      signatures: components['schemas']['SignatureView'][];
    };
    SignatureView: {
      authorisation: string | null;
      /** @description Name of the signer. */
      by: string;
      /** @description The leaf of that entry: what the signature is bound to. */
      contentSha256: string;
      /** @description Id of the record entry it was given with. */
      entry: string;
      /** @description The sign-in or sheet that it leads back to. */
      evidence: string;
      /** @description id */
      id: string;
      licence: string | null;
      /**
       * @description The form of the signature.
       * @enum {string}
       */
      method: 'password' | 'passkey' | 'single-sign-on' | 'paper';
      misfits: string[];
      organisation: string | null;
      registration: string | null;
      /** @description Role in which it was signed. */
      role: string;
      sealedAs: number | null;
      /**
       * Format: date-time
       * @description When (ISO 8601)
       */
      signedAt: string;
      /**
       * Format: date-time
       * @description The same as a clock at the base reads it, with its offset (ISO 8601)
       */
      signedAtBase: string;
      /** @description What was certified, word for word. */
      statement: string;
      /** @description Everything fits the bytes of the entry. */
      verifies: boolean;
      /** @description What was done. */
      what: string;
    };
    SignBody: {
      /** @description A passkey that signed this statement. */
      passkey?: components['schemas']['PasskeyBody'];
      /** @description The signer's own secret, entered again for this signature. */
      secret?: string;
      /** @description A fresh sign-on for this statement. */
      signedOn?: string;
      /** @description The statement that was shown to the signer, word for word. */
      statement: string;
    };
    /** @description Who signed, as shown to every reader. */
    SignedBy: {
      /** @description Authorisation number. */
      authorisation: string;
      /** @description Name. */
      by: string;
      /** @description Licence or certificate number. */
      licence: string;
      /**
       * @description The form of the signature.
       * @enum {string}
       */
      method: 'password' | 'passkey' | 'single-sign-on' | 'paper';
      /** @description Organisation with its approval number. */
      organisation: string;
      /** @description Role in which it was signed. */
      role: string;
      /**
       * Format: date-time
       * @description When it was signed (ISO 8601)
       */
      signedAt: string;
    };
    SignInBody: {
      /** @description Your sign-in name. */
      name: string;
      /** @description Your secret. */
      secret: string;
    };
    SignOn: {
      name: string | null;
      /** @description What is certified when an account is linked. */
      statement: string;
    };
    SignOnBegun: {
      /** @description Where the browser goes. */
      address: string;
    };
    SpareBody: {
      /** @description The aircraft. */
      aircraft: string;
      /** @description Code of the station where it stands. */
      at: string;
      /** @description From when it is ready; absent means now. */
      readyAt?: string;
    };
    StartCardBody: {
      /**
       * @description Which card.
       * @example start-valve-by-hand
       */
      card: string;
      /** @description The flight it is done for, where it is owed before each departure. */
      forFlight?: string;
      /** @description The procedure it does, for a card that a procedure names. */
      procedure?: string;
    };
    StatedStartBody: {
      /** @description An instant; or the three below. */
      at?: string;
      /** @description The counter at the start; hours in whole minutes. */
      counter?: number;
      /** @description The document that states the start, with its reference. */
      document: string;
      /** @description When it read that. */
      readAt?: string;
      /** @description What the same counter read later. */
      reading?: number;
    };
    Statement: {
      /** @description Which act. */
      act: string;
      /** @description What will be certified. */
      statement: string;
    };
    StatementShownBody: {
      /** @description The statement that was shown, word for word. */
      statement: string;
    };
    StationBody: {
      /**
       * @description Its code, as plans and movement messages name it.
       * @example QXA
       */
      code: string;
      /** @description Its name. */
      name: string;
      /**
       * @description IANA zone of its clocks.
       * @example Europe/Paris
       */
      zone: string;
    };
    StationCoverBody: {
      /** @description What the person has there. */
      equipment: string[];
      /** @description From when; absent: already there. */
      from?: string;
      /** @description Who is there; absent: nobody authorised and equipped is. */
      person?: string;
      /** @description Where this is known from, such as a roster with its day. */
      source: string;
      /** @description Until when, exclusive; absent: standing. */
      until?: string;
    };
    StationCoverEntered: {
      /** @description id */
      id: string;
    };
    StationEntered: {
      /** @description code */
      code: string;
    };
    Stations: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      /** @description Members who may be named. */
      maintain: {
        /** @description id */
        id: string;
        /** @description name */
        name: string;
      }[];
      stations: {
        /** @description Station. */
        code: string;
        /** @description Its name. */
        name: string;
        /** @description Empty: nobody has said who is there, so it is not known. */
        people: {
          /**
           * Format: date-time
           * @description When it was entered here (ISO 8601)
           */
          enteredAt: string;
          enteredBy: string | null;
          equipment: string[];
          from: string | null;
          fromLocal: string | null;
          /** @description id */
          id: string;
          person: string | null;
          /** @description Where this is known from. */
          source: string;
          until: string | null;
          untilLocal: string | null;
          /** @description Version, for If-Match. */
          version: number;
        }[];
        /** @description IANA zone of its clocks. */
        zone: string;
      }[];
    };
    StayBody: {
      /** @description The correction that waits. */
      asked: string;
      /** @description Why it stays as it is written. */
      reason: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    StepBody: {
      /** @description Batch, serial or certificate number of what was fitted new. */
      batch?: string;
      /** @description Reference of its release certificate, where the card asks. */
      certificate?: string;
      /** @description How many. */
      count?: number;
      /** @description What the look afterwards found. */
      findings?: string;
      /** @description Minutes that the aircraft shows, read from it. */
      minutes?: number;
      /** @description Number on its collar, streamer, placard or tool. */
      number?: string;
      /** @description Part number of what was fitted new. */
      partNumber?: string;
      /** @description Readings of a run. */
      readings?: components['schemas']['ReadingBody'][];
      /**
       * @description done: do, verify. measured: value, unit. renewed: partNumber, batch, count, certificate. begun: a wait or a run begins (minutes, where the aircraft shows them). waited: it is over. ran: readings. looked: findings. out, in: count and number.
       * @enum {string}
       */
      result: 'done' | 'measured' | 'renewed' | 'begun' | 'waited' | 'ran' | 'looked' | 'out' | 'in';
      /** @description The second person, who signs here without being signed in. */
      second?: components['schemas']['SecondPersonBody'];
      /** @description Which step. */
      step: string;
      /** @description Its unit. */
      unit?: string;
      /** @description Which equipment was used. */
      used?: components['schemas']['EquipmentBody'][];
      /** @description The value read. */
      value?: number;
      /** @description The work on the card, by the id it was started under. */
      work: string;
    };
    /** @description A stop where something can be done. */
    Stop: {
      /** @description Id of the flight that leaves after it. */
      beforeFlight: string;
      fits: boolean | null;
      /** @description Minutes on the ground. */
      groundMinutes: number;
      /** @description Where. */
      station: string;
    };
    SupposedFactBody: {
      /**
       * @description Key of the fact.
       * @example flight.icing
       */
      key: string;
      /** @description The value, of the type of the fact. */
      value: string | number | boolean;
    };
    SwapBody: {
      /** @description The aircraft whose rotations may change hands: all that is planned for them from now on. */
      aircraft: string[];
      /** @description What operations allow, flight by flight. */
      allowed: components['schemas']['AllowedBody'][];
      /** @description Aircraft standing by. */
      spares?: components['schemas']['SpareBody'][];
    };
    /** @description A proposal to exchange rotations. Operations decide; the answer for each aircraft is then asked anew. */
    SwapProposal: {
      /**
       * @description What came of it.
       * @enum {string}
       */
      answer: 'proposed' | 'impossible' | 'not-offered';
      /** @description One aircraft for each rotation. */
      assignments?: {
        /** @description Mark of the aircraft that would fly it. */
        aircraft: string;
        flights: string[];
        minutes: number | null;
        /** @description Mark of the aircraft it was planned for. */
        planned: string;
        /** @description Id of the aircraft it was planned for. */
        rotation: string;
      }[];
      /** @description In one sentence. */
      because: string;
      /** @description Flights flown by another aircraft than planned. */
      changedFlights?: number;
      /** @description The fewest flights that cannot be covered together, or those of which operations have not spoken. */
      flights?: {
        because: string[];
        couldBe: string[];
        /** @description Flight. */
        flight: string;
      }[];
      /** @description All outstanding work that has a figure. */
      minutes?: number;
      /** @description Flights before which some work has no figure. */
      withoutFigure?: number;
    };
    SwapUnitBody: {
      /** @description The unit that was failed. */
      fromUnit: string;
      /** @description Where each thing left for it is now. */
      moved: components['schemas']['MovedBody'][];
      /** @description Why it was swapped. */
      reason: string;
      /** @description Serial number of the failed part. */
      serial?: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description The unit that is failed now. */
      toUnit: string;
    };
    TakeOverBody: {
      /** @description The hand-over that is taken. */
      given: string;
      /** @description Remarks of who takes. */
      remarks?: string;
      /** @description The signature of who takes. */
      sign: components['schemas']['SignBody'];
    };
    TakeUpBody: {
      /** @description Code of the invitation. */
      code: string;
      /** @description The signature of who takes it up. */
      sign: components['schemas']['SignBody'];
    };
    TellCodeBody: {
      /**
       * @description The code that was sent to the mailbox.
       * @example 1234 5678
       */
      code: string;
    };
    TestBody: {
      /**
       * @description Its result.
       * @enum {string}
       */
      result: 'good' | 'not-good';
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description Which test. */
      test: string;
    };
    ThingsBody: {
      /** @description Ids of the things. */
      items: string[];
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    /** @description Something about a message that waits for a person, or did. */
    TrayLine: {
      aircraft: string | null;
      /**
       * @description How it came.
       * @enum {string}
       */
      cameBy: 'text' | 'json' | 'mended' | 'file';
      closedAt: string | null;
      closedBy: string | null;
      flight: string | null;
      /** @description id */
      id: string;
      /** @description True while legs are worked out from the message. */
      inUse: boolean;
      mendedWith: string | null;
      /** @description Id of the message. */
      message: string;
      /**
       * Format: date-time
       * @description Since when it waits (ISO 8601)
       */
      openedAt: string;
      /**
       * @description What kind of thing is wrong.
       * @enum {string}
       */
      reason:
        | 'no-message'
        | 'flight-line'
        | 'day'
        | 'element'
        | 'nothing-reported'
        | 'receipt'
        | 'order'
        | 'future'
        | 'no-departure'
        | 'no-arrival'
        | 'conflict'
        | 'too-many'
        | 'unknown-registration'
        | 'receipt-in-future'
        | 'differs-from-person';
      /**
       * Format: date-time
       * @description When it was first received (ISO 8601)
       */
      receivedAt: string;
      registration: string | null;
      scheduledOn: string | null;
      sentBy: string | null;
      /** @description What is wrong, with the value. */
      sentence: string;
      /**
       * @description Settled by a later message, or mended by a person.
       * @enum {string}
       */
      state: 'open' | 'settled' | 'mended';
      /** @description The message as it came. */
      text: string;
      why: string | null;
    };
    UndoBody: {
      /** @description Ids of the things that were undone. */
      items: string[];
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    /** @description What was used since the record of the defect. */
    UsedSince: {
      /** @description Block minutes. */
      blockMinutes: number;
      /** @description Cycles. */
      cycles: number;
      /** @description Of that engine. */
      engineCycles?: number;
      /** @description Of the engine that the interval is about. */
      engineMinutes?: number;
      /** @description Days on which a flight began. */
      flightDays: number;
      /** @description Airborne minutes. */
      flightMinutes: number;
      /** @description Flights. */
      flights: number;
      lastFlightDayOn: string | null;
    };
    /** @description May this aircraft fly this flight, and why. */
    Verdict: {
      /** @description Registration. */
      aircraft: string;
      /**
       * Format: date-time
       * @description The instant it was asked for (ISO 8601)
       */
      at: string;
      earliestOffBlockAt: string | null;
      /** @constant */
      evaluator: 'json-rules-engine';
      flight: string | null;
      /** @description Conditions of the whole aircraft. */
      gates: {
        /**
         * @description After the work that can be done before the flight.
         * @enum {string}
         */
        after: 'F' | 'U' | 'T';
        /** @description Why. */
        because: string;
        /** @description Of the combination: what was found about the items together. */
        found?: string[];
        /** @description Which gate. */
        gate: string;
        /**
         * @description As things are: false, unknown, true.
         * @enum {string}
         */
        now: 'F' | 'U' | 'T';
        /** @description In words. */
        text: string;
      }[];
      helps?: components['schemas']['WhatHelps'];
      /**
       * @description What is possible if they turn out well.
       * @enum {string}
       */
      hi: 'may-fly' | 'after-work' | 'may-not-fly';
      items: components['schemas']['ItemAnswer'][];
      lateMinutes: number | null;
      /**
       * @description What is certain whatever the unknowns turn out to be.
       * @enum {string}
       */
      lo: 'may-fly' | 'after-work' | 'may-not-fly';
      mel: {
        /** @description document */
        document: string;
        /** @description revision */
        revision: string;
      } | null;
      notLookedAt: string[];
      /** @description Documents of authorities without which it may not fly this flight. */
      onlyUnder?: string[];
      questions: {
        /** @description Key of the fact. */
        fact: string;
        mayAnswer: string[];
        neededBy: string[];
        /** @description The question. */
        question: string;
      }[];
      reason: ('budget' | 'readings') | null;
      /** @description The deciding ones first. */
      reasons: string[];
      refusedRows: {
        because: string[];
        /** @description entry */
        entry: string;
        /** @description row */
        row: string;
        /** @description unit */
        unit: string;
      }[];
      validUntil: {
        /**
         * Format: date-time
         * @description Until when the answer is good (ISO 8601)
         */
        at: string;
        /** @description Why. */
        because: string;
      } | null;
      /**
       * @description The answer.
       * @enum {string}
       */
      verdict: 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';
      /** @description The answer in words. */
      words: string;
      /** @description What is still to be done, each step after those that it waits for. */
      work: components['schemas']['WorkStep'][];
      workMinutes: number | null;
    };
    VerificationBody: {
      /** @description Every panel and cowl is closed. */
      panelsClosed: boolean;
      /** @description What is left on the aircraft is what the register says. */
      registerChecked: boolean;
      /** @description Remarks. */
      remarks?: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
      /** @description Every tool is accounted for. */
      toolsAccounted: boolean;
    };
    VerifiedBody: {
      /** @description Every panel and cowl is closed. */
      panelsClosed: boolean;
      /** @description What is left on the aircraft is what the register says. */
      registerChecked: boolean;
      /** @description Remarks. */
      remarks?: string;
      /** @description Every tool is accounted for. */
      toolsAccounted: boolean;
    };
    WhatHelps: {
      /**
       * Format: date-time
       * @description When this was computed (ISO 8601)
       */
      at: string;
      betterRows: {
        answer: {
          earliestOffBlockAt: string | null;
          lateMinutes: number | null;
          reasons: string[];
          /**
           * @description The answer under these rows.
           * @enum {string}
           */
          verdict: 'nothing-open' | 'may-fly' | 'after-work' | 'not-settled' | 'may-not-fly';
          /** @description The answer in words. */
          words: string;
          work: components['schemas']['WorkStep'][];
          workMinutes: number | null;
        };
        rows: {
          /** @description id */
          defect: string;
          entry: string | null;
          /** @description True when it is to be changed, or signed for the first time. */
          isChange: boolean;
          row: string | null;
          signedRow: string | null;
          units: string[];
        }[];
        /** @description False when better rows may exist, since the search was given up. */
        shownBest: boolean;
      } | null;
      leastToFix: {
        /** @description False reads: these, perhaps others. */
        isWhole: boolean;
        reason: string | null;
        /** @description Each set suffices, and none holds a smaller one; the fewest first. */
        repairs: {
          defects: string[];
          minutes: number | null;
        }[];
      } | null;
      whyRefused: {
        /** @description All smallest sets that refuse the row. */
        because: {
          conditions: {
            /** @description Which condition. */
            id: string;
            /** @description In words. */
            text: string;
          }[];
          /** @description Other open items that must be open for it. */
          openItems: string[];
        }[];
        /** @description id */
        defect: string;
        /** @description MEL entry. */
        entry: string;
        /** @description False: others, or smaller ones, may exist. */
        isWhole: boolean;
        /** @description The row. */
        row: string;
      }[];
    };
    WithdrawCountBody: {
      /** @description Why it was never so. */
      reason: string;
      /** @description The signature. */
      sign: components['schemas']['SignBody'];
    };
    WorkLine: {
      /** @description Who does and signs it. */
      by: string;
      card: string | null;
      cautions: string[];
      /** @description True when it is owed before each departure. */
      eachDeparture: boolean;
      /** @description M or O. */
      kind: string;
      leaves: {
        /** @description kind */
        kind: string;
        /** @description undo */
        undo: string;
        /** @description where */
        where: string;
      }[];
      minutes: number | null;
      reference: string | null;
      /** @description How often it is owed, in words. */
      repeat: string;
      signed: {
        /** @description Authorisation number. */
        authorisation: string;
        /** @description Name. */
        by: string;
        /** @description When it was done. */
        doneAt: string;
        /** @description Licence or certificate number. */
        licence: string;
        /**
         * @description The form of the signature.
         * @enum {string}
         */
        method: 'password' | 'passkey' | 'single-sign-on' | 'paper';
        /** @description Organisation with its approval number. */
        organisation: string;
        /** @description Role in which it was signed. */
        role: string;
        /**
         * Format: date-time
         * @description When it was signed (ISO 8601)
         */
        signedAt: string;
      } | null;
      /** @description What is to be done. */
      text: string;
      /** @description Which work. */
      work: string;
    };
    WorkStep: {
      /** @description Who does and signs it. */
      by: string;
      /** @description Id of the defect. */
      defect?: string;
      endsAfter: number | null;
      minutes: number | null;
      /** @description Steps that must be done before it. */
      needs: number[];
      /** @description True when somebody authorised must stand at the station. */
      needsPersonAtStation: boolean;
      startsAfter: number | null;
      /** @description 1, 2, 3 ... in the order in which it can be done. */
      step: number;
      /** @description What is to be done. */
      text: string;
      /** @description Which work. */
      work: string;
    };
    WriteUpBody: {
      /** @description The aircraft. */
      aircraft: string;
      /** @description What was seen, in plain text. */
      description: string;
      /** @description The message the aircraft showed. */
      faultMessage?: string;
      /** @description The failed item, when it is known already. */
      item?: components['schemas']['ItemBody'];
      /** @description Why it is entered late; needed when it is. */
      lateReason?: string;
      /** @description When it happened, if anybody wrote that down. */
      occurredAt?: string;
      /**
       * @description Who found it.
       * @enum {string}
       */
      origin: 'technician' | 'crew' | 'cabin';
      /** @description When it was written in the log, with the offset as written there. */
      recordedAt: string;
      /** @description Number of the log sheet. */
      sheet?: string;
      /**
       * @description System (ATA chapter), two digits.
       * @example 80
       */
      system?: string;
      /**
       * @description Where its flight was when it was found, if anybody said.
       * @enum {string}
       */
      whenFound?: 'before-moving' | 'own-power' | 'after-take-off';
    };
    /** @description Where name, sign-in name, licence number or mailbox of somebody stands in what people wrote. */
    WrittenNames: {
      /** @description There may be more: the search stopped. */
      more: boolean;
      places: {
        /** @description Number of the item, mark of the aircraft, or what it is. */
        name: string;
        /** @description The page that shows it. */
        page: string;
        /** @description How many texts there hold the name. */
        texts: number;
      }[];
      /** @description What can be done about it. */
      says: string;
      words: string[];
    };
    ZoneDataView: {
      /**
       * Format: date-time
       * @description When this was read (ISO 8601)
       */
      at: string;
      differences: components['schemas']['ZoneDifference'][];
      newest: string | null;
      /** @description True when this server has older data: it computes no deadlines. */
      older: boolean;
      /** @description Time-zone data of this server. */
      tzdb: string;
    };
    /** @description A deadline that newer time-zone data ends at another instant. Its last day stays. */
    ZoneDifference: {
      confirmedAt: string | null;
      /** @description id */
      defect: string;
      /**
       * Format: date-time
       * @description The exclusive end by the newer data (ISO 8601)
       */
      endsAfter: string;
      /**
       * Format: date-time
       * @description The exclusive end as signed (ISO 8601)
       */
      endsBefore: string;
      /**
       * Format: date-time
       * @description When it was found (ISO 8601)
       */
      foundAt: string;
      /**
       * Format: date-time
       * @description The one that counts: the earlier until somebody confirmed (ISO 8601)
       */
      inForce: string;
      /** @description Number of the defect. */
      number: string;
      /** @description Time-zone data that reads it otherwise. */
      tzdbAfter: string;
      /** @description Time-zone data it was signed with. */
      tzdbBefore: string;
      /** @description The zone its days are counted in. */
      zone: string;
    };
  };
  responses: never;
  parameters: never;
  requestBodies: never;
  headers: never;
  pathItems: never;
}
export type $defs = Record<string, never>;
export interface operations {
  EnteringController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AircraftEntries'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnteringController_enter: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AircraftBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AircraftEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  FleetController_aircraft: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AircraftView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  FleetController_answer: {
    parameters: {
      query?: {
        /** @description The flight; absent asks without one. */
        flight?: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Verdict'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnginesController_view: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['EnginesView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnginesController_enter: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['EngineCountBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['EngineCounted'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnginesController_correct: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description Version as it was read, in quotes. */
        'If-Match': string;
      };
      path: {
        count: string;
      };
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['EngineCountBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['EngineCounted'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnginesController_withdraw: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description Version as it was read, in quotes. */
        'If-Match': string;
      };
      path: {
        count: string;
      };
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['WithdrawCountBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['EngineCounted'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnginesController_statement: {
    parameters: {
      query: {
        /** @description What is to be signed. */
        act: 'reading' | 'run' | 'withdrawn';
      };
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MelController_search: {
    parameters: {
      query: {
        /** @description Number, words, chapter or fault message. */
        q: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['EntryHits'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MelController_entry: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
        number: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['EntryView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DispatchController_answer: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['FactBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['FactAnswered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnteringController_change: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['FitChangeBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AircraftEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnteringController_planned: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['PlannedFlights'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnteringController_plan: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['FlightBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['FlightEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AcceptancesController_view: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        flight: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AcceptanceView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AcceptancesController_accept: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
      };
      path: {
        flight: string;
      };
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AcceptanceBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AcceptanceGiven'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AcceptancesController_statement: {
    parameters: {
      query: {
        /** @description Whether it is accepted. */
        answer: 'yes' | 'no';
        /** @description As whom. */
        role: 'commander' | 'dispatcher';
      };
      header?: never;
      path: {
        flight: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnteringController_cancel: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path: {
        flight: string;
      };
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ServiceBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['FlightEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  HistoriesController_ofAircraft: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecordHistory'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DocumentsController_ofAircraft: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/pdf': string;
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DispatchController_statement: {
    parameters: {
      query: {
        /** @description The answer that is to be signed. */
        answer: 'yes' | 'no';
        /** @description `<entry>/<row>/<judgement>`, or `combination`. */
        judgement: string;
      };
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DispatchController_judge: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['JudgementBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['JudgementGiven'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_view: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_stay: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AsWrittenBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_correct: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['CorrectionBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_end: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['EndedBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_fit: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['FittedBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_find: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['FoundBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_give: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['HandOverBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_take: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['TakeOverBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_move: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['MoveBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_remove: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ThingsBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_look: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['SecondLookBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_see: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the register as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ThingsBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RegisterDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RegisterController_statement: {
    parameters: {
      query: {
        /** @description Which act is to be signed. */
        act:
          | 'fitted'
          | 'removed'
          | 'seen'
          | 'move'
          | 'ended'
          | 'correction'
          | 'second-look'
          | 'as-written'
          | 'taken-back'
          | 'give'
          | 'take';
        /** @description The correction that waits: of `second-look`, `as-written` and `taken-back`. */
        asked?: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  LegsController_list: {
    parameters: {
      query?: {
        /** @description Legs that left from then on; absent means the last 30 days. */
        from?: string;
        /** @description Legs that left before then. */
        until?: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AircraftLegs'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  LegsController_enter: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['LegBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['LegWritten'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  LegsController_correct: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description Version of the leg as it was read, in quotes. */
        'If-Match': string;
      };
      path: {
        leg: string;
      };
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['LegBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['LegWritten'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  LossesController_list: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Losses'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  LossesController_state: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['LossBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Losses'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  LossesController_statement: {
    parameters: {
      query: {
        /** @description The authority that was told. */
        authority: string;
        /** @description From when on something is missing. */
        from: string;
        /** @description What was lost, and how. */
        lost: string;
        /** @description Out of what it was made anew: sheets, work orders, the record of the engine shop. */
        madeFrom: string;
        /** @description The reference under which it was told. */
        reference: string;
        /** @description Until when. */
        until: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DispatchController_nextFlights: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['NextFlights'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  FleetController_questions: {
    parameters: {
      query?: {
        /** @description The flight; absent asks without one. */
        flight?: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['QuestionPlan'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnteringController_retire: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ServiceBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AircraftEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnteringController_bringBack: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ServiceBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AircraftEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  FleetController_whatHelps: {
    parameters: {
      query?: {
        /** @description The flight; absent asks without one. */
        flight?: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['WhatHelps'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  FeedsController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['CalendarFeeds'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  FeedsController_make: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each request. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['MakeFeedBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['CalendarFeedMade'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  FeedsController_revoke: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each request. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['CalendarFeedRevoked'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CalendarController_read: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        token: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'text/calendar': string;
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardLibraryController_confirm: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ConfirmationBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['CardConfirmed'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardLibraryController_statement: {
    parameters: {
      query: {
        /** @description The revision it was held against. */
        against: string;
        /** @description The aircraft type. */
        aircraftType: string;
        /** @description Which card. */
        card: string;
      };
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardLibraryController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['CardList'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardLibraryController_load: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['CardFileBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['CardsLoaded'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardLibraryController_schema: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DefectsController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['DefectList'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DefectsController_writeUp: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['WriteUpBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  OpenItemsController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'text/csv': string;
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DefectsController_one: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['DefectView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CorrectingController_stay: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['StayBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ExtendingController_enter: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AuthorityDocumentBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardsController_inspect: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['InspectionBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardsController_askSecond: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['SecondAskedBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['PasskeyAsked'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardsController_sign: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['CardSignatureBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardsController_step: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['StepBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardsController_stop: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['CardStopBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardsController_list: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['CardsOfDefect'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardsController_start: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['StartCardBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardsController_one: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
        work: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['CardWorkView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ConcurrenceController_concur: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['DeferBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SignedBy'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CorrectingController_correct: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['CorrectBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CrewPlacardController_fit: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['CrewPlacardBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_defer: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['DeferBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ExtendingController_offer: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ExtensionOffer'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ExtendingController_grant: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['GrantExtensionBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ExtendingController_ask: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AskExtensionBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ExtensionDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ExtendingController_close: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['CloseRequestBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ExtensionDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  HistoriesController_ofDefect: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecordHistory'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DocumentsController_ofDefect: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/pdf': string;
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_identify: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['IdentifyBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_inspect: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['InspectBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_join: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['JoinBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_leave: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['LeftAlteredBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_findNoFault: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AnswerBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_fitPlacard: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['PlacardBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PlacardsController_labels: {
    parameters: {
      query?: {
        /** @description A sheet of A4, or a roll 62 mm wide. A4 when absent. */
        size?: 'a4' | 'roll';
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/pdf': string;
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_signProcedure: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ProcedureBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_raiseInError: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AnswerBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_rectify: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['RectifyBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecurrenceController_view: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecurrenceView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecurrenceController_decide: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['RecurrenceBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecurrenceDecided'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecurrenceController_statement: {
    parameters: {
      query: {
        /** @description Whether it is repetitive. */
        answer: 'yes' | 'no';
      };
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_release: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ReleaseBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_restore: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['RestoreBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_changeRow: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ChangeRowBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CorrectingController_look: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['LookBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DefectsController_statement: {
    parameters: {
      query: {
        /** @description Which act is to be signed. */
        act:
          | 'defer'
          | 'change-row'
          | 'concur'
          | 'procedure'
          | 'placard'
          | 'undo'
          | 'rectify'
          | 'test'
          | 'inspect'
          | 'restore'
          | 'release'
          | 'no-fault-found'
          | 'raised-in-error'
          | 'extend'
          | 'enter-document'
          | 'leave'
          | 'swap-unit'
          | 'join'
          | 'verify'
          | 'card'
          | 'card-second'
          | 'card-inspection'
          | 'card-stop'
          | 'correct'
          | 'second-look'
          | 'stays-as-written';
        /** @description The correction that waits, for `second-look` and `stays-as-written`. */
        asked?: string;
        /** @description Document in words, for `defer` on another basis. */
        document?: string;
        /** @description MEL entry, for `defer` and `concur`. */
        entry?: string;
        /** @description What is to read otherwise, for `correct`. */
        field?:
          | 'description'
          | 'sheet'
          | 'system'
          | 'faultMessage'
          | 'occurredAt'
          | 'recordedAt'
          | 'whenFound'
          | 'unit'
          | 'reference'
          | 'issuedBy'
          | 'limit'
          | 'placardText'
          | 'workDone'
          | 'partNumber'
          | 'serialOn'
          | 'serialOff'
          | 'certificate'
          | 'test'
          | 'findings'
          | 'staysOpen'
          | 'checks'
          | 'reason'
          | 'watch'
          | 'remarks'
          | 'number'
          | 'authority'
          | 'doneAt'
          | 'lateReason'
          | 'whyNotFixed'
          | 'plan'
          | 'agreement'
          | 'aircraft'
          | 'entry'
          | 'row'
          | 'category'
          | 'interval'
          | 'until'
          | 'enteredAt'
          | 'work'
          | 'result'
          | 'complete'
          | 'outcome'
          | 'measured'
          | 'allowed';
        /** @description What it should read, for `correct`. */
        now?: string;
        /** @description The act that is wrong, for `correct`; absent: the write-up. */
        of?: string;
        /** @description Which of several, from 0, for `correct`. */
        part?: number;
        /** @description Row, for `defer`, `change-row` and `concur`. */
        row?: string;
        /** @description Start of use that a document states, for `defer` and `concur`. */
        startAt?: string;
        /** @description Or the counter at the start. */
        startCounter?: number;
        /** @description The document that states the start. */
        startDocument?: string;
        /** @description When it read that. */
        startReadAt?: string;
        /** @description What the counter read later. */
        startReading?: number;
        /** @description What stays open, for `release`; several joined by "; ". */
        staysOpen?: string;
        /** @description Which step of the card, for `card-second`. */
        step?: string;
        /** @description Why one who did the work inspects it, for `inspect`. */
        unforeseen?: string;
        /** @description Which work, for `procedure`; which work on a card, for acts on a card. */
        work?: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_swapUnit: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['SwapUnitBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_test: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['TestBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_undo: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['UndoBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ActsController_verify: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the defect as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['VerificationBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ActDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DispatchController_ask: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['QuestionBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Verdict'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  LiveController_follow: {
    parameters: {
      query?: never;
      header: {
        'last-event-id': string;
        /** @description The number seen last: what followed is told first. */
        'Last-Event-ID'?: string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      /**
       * @description Server-sent events: `from` (where it begins), `change` ({ number, aircraft, what }), `behind` (too much was
       *     missed: read everything again), `still-here`. The id of an event is its number in the record.
       */
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'text/event-stream': string;
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ExtensionsController_register: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ExtensionRegister'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ExtensionsController_one: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ExtensionDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ExtensionsController_document: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'text/html': string;
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ExtensionsController_note: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each act. */
        'Idempotency-Key': string;
        /** @description ETag of the extension as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['NoticeBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ExtensionDone'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  DispatchController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['FactList'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  FleetController_fleet: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Fleet'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SwapController_swap: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['SwapBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SwapProposal'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  FlightPlansController_plan: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['FlightPlanBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['FlightsPlanned'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ProblemsController_health: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Health'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  InvitationsController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Invitations'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  InvitationsController_invite: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['InvitationBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['InvitationMade'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  InvitationsController_withdraw: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['InvitationWithdrawn'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  CardLibraryController_recordRevision: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ManualRevisionBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ManualRevision'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MelController_revisions: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MelRevisions'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MelController_load: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['MelFileBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MelLoaded'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MelController_schema: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MovementsController_receive: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each delivery. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': string | components['schemas']['MovementsBody'];
        'text/plain': string | components['schemas']['MovementsBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MovementsReceived'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MovementsController_list: {
    parameters: {
      query?: {
        /** @description Which entries; absent means the open ones. */
        state?: 'open' | 'settled' | 'mended';
      };
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MovementTray'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MovementsController_mend: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each delivery. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['MendBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MovementMended'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  OpeningController_steps: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Opening'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  OpeningController_anybody: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Anybody'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnteringController_organisation: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['OrganisationBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['OrganisationEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PasskeysController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Passkeys'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PasskeysController_register: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['NewPasskeyBody'];
      };
    };
    responses: {
      204: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PasskeysController_remove: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      204: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PasskeysController_toRegister: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['SignBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['PasskeyAsked'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PasskeysController_toSign: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['StatementShownBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['PasskeyAsked'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MembersController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Members'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AccountsController_create: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AccountBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AccountMade'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AccountsController_statement: {
    parameters: {
      query: {
        /** @description Aircraft types, joined by commas. */
        aircraftTypes: string;
        /** @description Licence categories, joined by commas. */
        licenceCategories?: string;
        /** @description Its number. */
        number: string;
        /** @description The organisation that grants it. */
        organisation: string;
        /** @description What it lets its holder do, joined by commas. */
        privileges: string;
        /** @description Valid from. */
        validFrom: string;
        /** @description Valid until before. */
        validUntil?: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AccountsController_grant: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AuthorisationBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MemberChanged'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AccountsController_revoke: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path: {
        authorisation: string;
      };
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ReasonBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MemberChanged'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MembersController_erase: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ErasureBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['PersonErased'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MembersController_erasureStatement: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AccountsController_anotherFirst: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['AccountMade'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MembersController_leaves: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['LeavingBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MemberChanged'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AccountsController_lock: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ReasonBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MemberChanged'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MembersController_issue: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['OneOffBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MemberChanged'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MembersController_statement: {
    parameters: {
      query: {
        /** @description Why nobody else can, and what makes this person fit for it. */
        because: string;
        /** @description The open defect it is for. */
        defect: string;
        /** @description What one signature may be given for. */
        privilege: 'defer' | 'sign-procedure' | 'inspect' | 'release';
        /** @description Until when it may be used. */
        validUntil: string;
      };
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AccountsController_roles: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['RolesBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MemberChanged'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  AccountsController_unlock: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ReasonBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['MemberChanged'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  MembersController_writtenNames: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['WrittenNames'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ProblemsController_all: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ProblemTypes'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ProblemsController_one: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        code: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ProblemType'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecordController_entries: {
    parameters: {
      query: {
        /** @description The aircraft. */
        aircraft: string;
      };
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecordEntries'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecordController_head: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecordHead'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecordController_heads: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecordHeads'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  HoldsController_place: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['HoldBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Holds'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  HoldsController_release: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ReleaseHoldBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Holds'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecordController_proof: {
    parameters: {
      query?: {
        /** @description Number of the entry. */
        entry?: string;
        /** @description Size of a head that was signed earlier. */
        since?: string;
      };
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecordProof'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecordController_pastKeeping: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Retention'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecordController_state: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecordState'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RecordController_verification: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['RecordVerified'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RemindersController_add: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each request. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['AddAddressBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ReminderAddressEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RemindersController_end: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each request. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ReminderAddressEnded'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RemindersController_askCode: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each request. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ReminderAddressConfirmed'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RemindersController_confirm: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each request. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['TellCodeBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ReminderAddressConfirmed'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RemindersController_renew: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each request. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ReminderAddressEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RemindersController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Reminders'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  RepeatsController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['FleetRepeats'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PeopleController_session: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SessionView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PeopleController_signIn: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['SignInBody'];
      };
    };
    responses: {
      204: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PeopleController_signOut: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      204: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PeopleController_seen: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      204: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  InvitationsController_look: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['CodeBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['InvitationSeen'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  InvitationsController_takeUp: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['TakeUpBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['InvitationTaken'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PeopleController_choose: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ChooseOperatorBody'];
      };
    };
    responses: {
      204: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PeopleController_signInByPasskey: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['PasskeyBody'];
      };
    };
    responses: {
      204: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PeopleController_passkeyChallenge: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['PasskeyAsked'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  PeopleController_changeSecret: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ChangeSecretBody'];
      };
    };
    responses: {
      204: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SettingsController_view: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SettingsView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SettingsController_change: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each change. */
        'Idempotency-Key': string;
        /** @description ETag of the settings as they were read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ChangeSettingsBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SettingsView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SettingsController_preview: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['PreviewSettingsBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SettingsPreview'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SignOnController_offered: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SignOn'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SignOnController_begin: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SignOnBegun'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SignOnController_callback: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content?: never;
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SignOnController_link: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['SignBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SignOnBegun'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SignOnController_signature: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['StatementShownBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SignOnBegun'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SignaturesController_own: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Signatures'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  SignaturesController_one: {
    parameters: {
      query?: never;
      header?: never;
      path: {
        id: string;
      };
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['SignatureView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  StationsController_list: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Stations'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  EnteringController_station: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['StationBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['StationEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  StationsController_enter: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
      };
      path: {
        code: string;
      };
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['StationCoverBody'];
      };
    };
    responses: {
      201: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['StationCoverEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  StationsController_end: {
    parameters: {
      query?: never;
      header: {
        'Idempotency-Key': string;
        /** @description Version of the line as it was read. */
        'If-Match': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['StationCoverEntered'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ZoneDataController_view: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ZoneDataView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ZoneDataController_confirm: {
    parameters: {
      query?: never;
      header: {
        /** @description A fresh UUID for each confirmation. */
        'Idempotency-Key': string;
      };
      path?: never;
      cookie?: never;
    };
    requestBody: {
      content: {
        'application/json': components['schemas']['ConfirmZoneDataBody'];
      };
    };
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['ZoneDataView'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
  ZoneDataController_statement: {
    parameters: {
      query?: never;
      header?: never;
      path?: never;
      cookie?: never;
    };
    requestBody?: never;
    responses: {
      200: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/json': components['schemas']['Statement'];
        };
      };
      /** @description A problem; see `/api/problems`. */
      default: {
        headers: {
          [name: string]: unknown;
        };
        content: {
          'application/problem+json': components['schemas']['Problem'];
        };
      };
    };
  };
}
