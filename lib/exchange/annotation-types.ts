/** The part of the Web Annotation Data Model (W3C Recommendation, 23 February 2017) that is written here. */
export const ANNOTATION_CONTEXT = "http://www.w3.org/ns/anno.jsonld";

export interface TextualBody {
  readonly type: "TextualBody";
  readonly purpose: "tagging" | "describing" | "commenting";
  readonly format: "text/plain";
  readonly value: string;
}

export interface Annotation {
  readonly id: string;
  readonly type: "Annotation";
  readonly motivation: "tagging";
  readonly body: readonly TextualBody[];
  readonly target: {
    readonly type: "SpecificResource";
    readonly source: { readonly id: string; readonly type: "Image" };
    readonly selector: { readonly type: "SvgSelector"; readonly value: string };
  };
}

export interface AnnotationPage {
  readonly id: string;
  readonly type: "AnnotationPage";
  readonly partOf: string;
  readonly startIndex: 0;
  readonly items: readonly Annotation[];
}

export interface AnnotationCollection {
  readonly "@context": typeof ANNOTATION_CONTEXT;
  readonly id: string;
  readonly type: "AnnotationCollection";
  readonly label: string;
  readonly total: number;
  /** Absent when there is nothing on the page: a page of an empty collection is none. */
  readonly first?: AnnotationPage;
}
