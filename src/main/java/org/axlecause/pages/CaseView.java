package org.axlecause.pages;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A case on a page: what its sheet says, and what can be sent about it.
 *
 * @param reference its reference
 * @param status code of its status
 * @param state its status and whom it waits for
 * @param failed whether judging its latest entries faulted
 * @param restricted whether anything stands against using the vehicle, or nothing is known of it
 * @param sheet what the workshop's sheet says
 * @param notCured whether the last test showed that the fault is not cured, so that the causes are weighed anew
 * @param suspects causes with their grounds, the likeliest first
 * @param others how many unlikely causes are left out
 * @param checks what to look at next, the most telling first
 * @param axles the axles of the vehicle, for readings
 * @param stage the test that comes next: arrival, diagnostic or final
 * @param tested whether a roller test is on record
 * @param decisions lines that somebody decides
 * @param mayChange what is still to be looked at or settled, and where, so that the work may become another
 * @param components parts that a finding may speak about
 * @param conditions states that it may find
 * @param open what keeps the repair from being proven
 * @param afterWork parts to look at once more after the work
 * @param plan the steps of the work by what is their turn
 */
public record CaseView(
        String reference,
        String status,
        State state,
        boolean failed,
        boolean restricted,
        Sheet sheet,
        boolean notCured,
        List<Suspect> suspects,
        int others,
        List<Ask> checks,
        List<AxleView> axles,
        String stage,
        boolean tested,
        List<Choice> decisions,
        List<String> mayChange,
        List<Option> components,
        List<Option> conditions,
        List<String> open,
        List<AfterWork> afterWork,
        Plan plan) {

    /** Whether nothing more is done on it. */
    public boolean closed() {
        return status.equals("closed");
    }

    /** Whether what was found is cured or left, so that it is of interest no more. */
    public boolean over() {
        return closed() || status.equals("verified");
    }

    /** Lines that wait for a decision, or changed since it. */
    public List<Choice> undecided() {
        return decisions.stream().filter(Choice::open).toList();
    }

    /** Lines that are decided. */
    public List<Choice> decided() {
        return decisions.stream().filter(choice -> !choice.open()).toList();
    }

    /**
     * A status in words.
     *
     * @param name what it is
     * @param waits whom the case waits for, and for what
     */
    public record State(String name, String waits) {}

    /**
     * A cause with its grounds.
     *
     * @param code its code
     * @param place where
     * @param text what it is
     * @param standing how sure it is
     * @param because why
     * @param evidence what speaks for and against it
     * @param chain the picture of what follows from it; null where it has none
     */
    public record Suspect(
            String code,
            String place,
            String text,
            String standing,
            List<String> because,
            List<String> evidence,
            @Nullable ChainPicture chain) {}

    /**
     * A check to be made.
     *
     * @param code its code
     * @param text how it is done
     * @param place where
     * @param effort minutes and access
     * @param cautions what can hurt people
     * @param settles causes that its answers can prove or rule out
     * @param replies what can come out and was not written down yet
     * @param said what was written down already
     */
    public record Ask(
            String code,
            String text,
            String place,
            String effort,
            List<String> cautions,
            List<String> settles,
            List<Reply> replies,
            List<String> said) {}

    /**
     * A part to look at once more after the work.
     *
     * @param part the part and where it is
     * @param was how it was found
     * @param reply sound now, or still as it was
     */
    public record AfterWork(String part, String was, Reply reply) {}

    /**
     * The steps of the work in their order, by what is their turn.
     *
     * @param ended steps that were reported, whatever came out
     * @param next steps that nothing open comes before
     * @param later steps that wait for others
     */
    public record Plan(List<Sheet.Step> ended, List<Sheet.Step> next, List<Sheet.Step> later) {

        static Plan of(List<Sheet.Step> steps) {
            Set<Integer> open = steps.stream()
                    .filter(step -> step.outcome() == null)
                    .map(Sheet.Step::number)
                    .collect(Collectors.toSet());
            Map<Boolean, List<Sheet.Step>> byTurn = steps.stream()
                    .filter(step -> open.contains(step.number()))
                    .collect(Collectors.partitioningBy(
                            step -> step.after().stream().noneMatch(open::contains)));
            return new Plan(
                    steps.stream().filter(step -> !open.contains(step.number())).toList(),
                    byTurn.getOrDefault(true, List.of()),
                    byTurn.getOrDefault(false, List.of()));
        }
    }

    /**
     * Answers that need the same numbers, in one form.
     *
     * @param entry id of the entry that each of them makes
     * @param id unique on the page
     * @param about what they speak about; null where the heading above them says it
     * @param type type of the event that they are
     * @param blanks numbers to fill in first
     * @param answers one at least
     */
    public record Reply(
            String entry, String id, @Nullable String about, String type, List<Blank> blanks, List<Answer> answers) {}

    /**
     * An answer that one tap sends.
     *
     * @param says the answer
     * @param data its data with blanks
     * @param main whether it is what the form is for
     */
    public record Answer(String says, String data, boolean main) {}

    /**
     * A number to fill in.
     *
     * @param name its name in the data
     * @param label its words
     */
    public record Blank(String name, String label) {}

    /**
     * An axle to key readings in for.
     *
     * @param number from the front, from 1
     * @param name its words
     * @param drum whether it has drums
     * @param parking whether the parking brake works on it
     */
    public record AxleView(int number, String name, boolean drum, boolean parking) {}

    /**
     * A line that somebody decides.
     *
     * @param line the line
     * @param necessity how much it is needed
     * @param by who decides: customer or workshop
     * @param shown what is decided on, as data of the decision
     * @param decision the decision that stands; empty while none does
     */
    public record Choice(Sheet.Line line, String necessity, String by, String shown, String decision) {

        /** Whether it waits for a decision, or changed since the one that stands. */
        public boolean open() {
            return decision.isEmpty() || line.change() != null;
        }

        /** The decision to mark as chosen; empty while none stands for what is shown. */
        public String marked() {
            return open() ? "" : decision;
        }
    }

    /**
     * Something to choose.
     *
     * @param code its code
     * @param text its words
     */
    public record Option(String code, String text) {}
}
