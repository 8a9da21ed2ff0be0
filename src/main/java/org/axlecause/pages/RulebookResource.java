package org.axlecause.pages;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.shared.Page;
import org.jspecify.annotations.Nullable;

/** Pages on which the trade knowledge of the service is read. */
@Page
@Path("/rulebook")
@Produces(MediaType.TEXT_HTML)
@Needs
public class RulebookResource {

    private static final String SECTION = "rulebook";

    private final ReadRulebook readRulebook;
    private final RulesOfCase rulesOfCase;
    private final Frames frames;
    private final CurrentActor current;

    RulebookResource(ReadRulebook readRulebook, RulesOfCase rulesOfCase, Frames frames, CurrentActor current) {
        this.readRulebook = readRulebook;
        this.rulesOfCase = rulesOfCase;
        this.frames = frames;
        this.current = current;
    }

    @GET
    public String lists(@QueryParam("q") @Nullable String asked) {
        return Pages.rulebook(frames.of(SECTION), readRulebook.lists(null, asked))
                .render();
    }

    @GET
    @Path("/{kind}")
    public String list(@PathParam("kind") String kind, @QueryParam("q") @Nullable String asked) {
        return Pages.rulebook(frames.of(SECTION), readRulebook.lists(kind, asked))
                .render();
    }

    @GET
    @Path("/{kind}/{code}")
    public String entry(@PathParam("kind") String kind, @PathParam("code") String code) {
        return Pages.rulebookEntry(frames.of(SECTION), readRulebook.entry(kind, code))
                .render();
    }

    @GET
    @Path("/case/{reference}")
    public String ofCase(@PathParam("reference") String reference) {
        return Pages.rulebookCase(frames.of(SECTION), reference, rulesOfCase.groups(reference, current.get()))
                .render();
    }
}
