package org.axlecause.pages;

import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.List;
import java.util.Map;
import org.axlecause.access.CurrentActor;
import org.axlecause.access.Needs;
import org.axlecause.access.Role;
import org.axlecause.shared.Page;
import org.axlecause.shared.RefusedException;

/** Pages on which questions over many cases are asked; each question with its answer has an address of its own. */
@Page
@Path("/numbers")
@Produces(MediaType.TEXT_HTML)
@Needs(Role.ANALYST)
public class NumbersResource {

    private static final String SECTION = "numbers";
    private static final int REFUSED = 422;

    private final AskNumbers askNumbers;
    private final Frames frames;
    private final CurrentActor current;

    NumbersResource(AskNumbers askNumbers, Frames frames, CurrentActor current) {
        this.askNumbers = askNumbers;
        this.frames = frames;
        this.current = current;
    }

    @GET
    public String questions() {
        return Pages.numbers(frames.of(SECTION), List.of(NumbersQuestion.values()))
                .render();
    }

    @GET
    @Path("/{question}")
    public Response question(@PathParam("question") String question, @Context UriInfo uri) {
        NumbersPage page = askNumbers.page(known(question), parameters(uri), current.get());
        return Response.status(page.problems().isEmpty() ? Response.Status.OK.getStatusCode() : REFUSED)
                .entity(Pages.numbersQuestion(frames.of(SECTION), page).render())
                .build();
    }

    @GET
    @Path("/{question}/{form}")
    @Produces({MediaType.TEXT_HTML, MediaType.WILDCARD})
    public Response download(
            @PathParam("question") String question, @PathParam("form") String form, @Context UriInfo uri) {
        AskNumbers.Download download = askNumbers.download(known(question), form, parameters(uri), current.get());
        return Response.ok(download.content(), download.mediaType())
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + download.name() + "\"")
                .build();
    }

    private static Map<String, List<String>> parameters(UriInfo uri) {
        return Map.copyOf(uri.getQueryParameters());
    }

    private static NumbersQuestion known(String question) {
        return NumbersQuestion.of(question)
                .orElseThrow(() -> RefusedException.notFound("There is no question '" + question
                        + "' about numbers. Choose one from the list at /numbers."));
    }
}
