package org.axlecause.statistics;

import java.time.OffsetDateTime;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Weights of causes that somebody wants to be published: learned from the tenant's confirmed causes, or those of the book
 * again.
 *
 * @param id its id
 * @param state how far it is
 * @param asOf cases that were presented after it don't count
 * @param terms how much confirmed cases count; null where the book is proposed
 * @param position reference of the case that was looked at last; blank at the beginning
 * @param learning what was counted and scored so far
 * @param model what came out; null until then, and where the book is proposed
 * @param createdAt when it was proposed
 * @param createdBy by whom
 * @param finishedAt when it was worked out or withdrawn; null until then
 */
record Proposal(
        UUID id,
        State state,
        OffsetDateTime asOf,
        @Nullable LearningTerms terms,
        String position,
        Learning learning,
        @Nullable ProposedModel model,
        OffsetDateTime createdAt,
        String createdBy,
        @Nullable OffsetDateTime finishedAt) {

    static final String LEARNED = "learned";
    static final String BOOK = "book";

    /** How far a proposal is. */
    enum State {
        /** Confirmed causes are counted. */
        COUNTING,
        /** Cases held out are judged anew. */
        SCORING,
        /** It may be published. */
        PROPOSED,
        /** Too few cases to learn anything, or none held out that tells whether it is better. */
        NOTHING_LEARNED,
        WITHDRAWN,
        PUBLISHED;

        static State of(String code) {
            return valueOf(code.toUpperCase(Locale.ROOT).replace('-', '_'));
        }

        /** The code on the wire. */
        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    /** The word for where its weights come from: learned or book. */
    String source() {
        return terms == null ? BOOK : LEARNED;
    }

    boolean isAtWork() {
        return state == State.COUNTING || state == State.SCORING;
    }

    /** What tells this state of it from others. */
    String tag() {
        return String.join(
                "-",
                state.toString(),
                String.valueOf(learning.learnedFrom()),
                String.valueOf(learning.heldOut()),
                String.valueOf(learning.scored()),
                String.valueOf(learning.failed()));
    }

    /** The same with what further cases have told. */
    Proposal grown(Learning further, String last) {
        return new Proposal(
                id, state, asOf, terms, last, learning.plus(further), model, createdAt, createdBy, finishedAt);
    }

    /** The same from its first case on, now that all are counted. */
    Proposal counted() {
        return new Proposal(id, State.SCORING, asOf, terms, "", learning, model, createdAt, createdBy, finishedAt);
    }

    /** The same at an end of its work. */
    Proposal ended(State end, @Nullable ProposedModel found, OffsetDateTime moment) {
        return new Proposal(id, end, asOf, terms, position, learning, found, createdAt, createdBy, moment);
    }

    /** The same, published. */
    Proposal published() {
        return new Proposal(
                id, State.PUBLISHED, asOf, terms, position, learning, model, createdAt, createdBy, finishedAt);
    }
}
