package org.axlecause.fleet;

import com.fasterxml.jackson.databind.JsonNode;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.control.ActivateRequestContext;
import java.io.Serial;
import java.lang.ref.SoftReference;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.axlecause.access.Actor;
import org.axlecause.access.Role;
import org.axlecause.casefile.CopiedCaseStore;
import org.axlecause.casefile.CopiedCaseStore.Copy;
import org.axlecause.casefile.CopiedCaseStore.Told;
import org.axlecause.casefile.DrawnCaseStore.Drawn;
import org.axlecause.intake.AcceptBatch;
import org.axlecause.intake.Receipt;
import org.axlecause.shared.Json;
import org.axlecause.shared.TenantTransaction;

/**
 * Tells drawn cases as events and has them judged: the first case of each story by the path of any sender's events, in a
 * transaction that is taken back; all cases of the story are then copies of what it kept. A story that memory had no room
 * for is told again.
 */
@ApplicationScoped
class TellStories {

    private final AcceptBatch acceptBatch;
    private final CopiedCaseStore cases;
    private final TenantTransaction transaction;
    private final StoryTable table = StoryTable.onClassPath();
    private final AtomicInteger stories = new AtomicInteger();
    private final Map<Story, SoftReference<StoryTemplate>> told = new ConcurrentHashMap<>();

    TellStories(AcceptBatch acceptBatch, CopiedCaseStore cases, TenantTransaction transaction) {
        this.acceptBatch = acceptBatch;
        this.cases = cases;
        this.transaction = transaction;
    }

    /** How often a story was told so far. */
    int stories() {
        return stories.get();
    }

    /** The drawn case as judging would have kept it; no transaction may be open. */
    @ActivateRequestContext
    Copy copy(String tenant, Drawn drawn) {
        Story story = Story.of(drawn, table);
        SoftReference<StoryTemplate> kept = told.get(story);
        StoryTemplate template = kept == null ? null : kept.get();
        if (template == null) {
            template = tell(tenant, drawn, story);
            told.put(story, new SoftReference<>(template));
        }
        return template.with(StoryWords.of(drawn));
    }

    private StoryTemplate tell(String tenant, Drawn drawn, Story story) {
        StoryWords words = StoryWords.toTell(drawn, story.sides().get(1) > 0, stories.incrementAndGet());
        StoryScript script = new StoryScript(words, story, table).arrives();
        if (!story.causes().isEmpty()) {
            List<String> items = drawn.repairs().isEmpty()
                    ? List.of()
                    : drawn.repairs().get(0).items();
            decides(tenant, words, script, items);
            if (story.isWorkedOn()) {
                script.works(judged(tenant, words, script));
                if (!story.has("first-time-cure")) {
                    script.failsFinalTest();
                }
                if (story.has("verified")) {
                    if (!story.has("first-time-cure")) {
                        decides(tenant, words, script, items);
                        script.works(judged(tenant, words, script));
                    }
                    script.passesFinalTest();
                }
            }
        }
        return StoryTemplate.of(kept(tenant, words, script.closes()), words);
    }

    /** What is agreed to may bring further lines, which are decided too. */
    private void decides(String tenant, StoryWords words, StoryScript script, List<String> items) {
        script.decides(judged(tenant, words, script), items);
        script.decides(judged(tenant, words, script), items);
    }

    private JsonNode judged(String tenant, StoryWords words, StoryScript script) {
        return Json.read(kept(tenant, words, script).document());
    }

    /** What the service keeps of these events, which it then forgets. */
    private Told kept(String tenant, StoryWords words, StoryScript script) {
        Actor actor = new Actor(tenant, FleetCommand.NAME, Set.of(Role.ADMIN), null);
        try {
            transaction.run(tenant, () -> {
                for (Receipt receipt : acceptBatch.accept(script.batch().getBytes(StandardCharsets.UTF_8), actor)) {
                    if (!receipt.isStored() || receipt.judging() != null) {
                        throw new IllegalStateException("A told event was not taken: " + Json.text(receipt));
                    }
                }
                throw new TakenBackException(cases.read(words.reference()));
            });
            throw new IllegalStateException("A told story was kept");
        } catch (TakenBackException taken) {
            return taken.told;
        }
    }

    /** Takes a transaction back and keeps what it has read. */
    private static final class TakenBackException extends RuntimeException {

        @Serial
        private static final long serialVersionUID = 1L;

        private final transient Told told;

        TakenBackException(Told told) {
            super("taken back", null, false, false);
            this.told = told;
        }
    }
}
